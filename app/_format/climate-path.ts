import { storePath } from './store-path';

export interface ClimateAddress {
  /** first and last day */
  from?: string;
  to?: string;
  /** degrees C */
  tolerance?: number;
  /** points of relative humidity */
  humidity?: number;
  /** the figures of the picture as a table too */
  table?: 'yes';
}

/** Address of a store's climate over a stretch of days. */
export function climatePath(storeId: string, address: ClimateAddress = {}): string {
  const parameters = new URLSearchParams();
  for (const [name, value] of Object.entries(address)) if (value !== undefined) parameters.set(name, String(value));
  const text = parameters.toString();
  return `${storePath(storeId)}/climate${text ? `?${text}` : ''}`;
}
