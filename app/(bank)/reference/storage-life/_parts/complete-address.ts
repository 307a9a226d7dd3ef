import { storageLifeSchema } from '@/lib/schemas/calculators/storage-life';
import type { StoredSeed } from '@/lib/server/queries/stored-seed';
import type { Address } from '../../_parts/read-question';
import { moistureInStore, type StoreTarget } from './store-air';

type Example = Record<'crop' | 'moisture' | 'temperature' | 'initial' | 'wanted' | 'years', string>;

/** A crop with published constants of its own, where there is one. */
export function exampleFor(crops: readonly { id: string; own: boolean; published: boolean }[]): Example {
  const crop = (crops.find(({ own, published }) => own && published) ?? crops[0])?.id ?? '';
  return { crop, moisture: '9', temperature: '15', initial: '95', wanted: '85', years: '20' };
}

/** A parameter that is given and not blank; the first where it is given twice. */
export function ownParameter(address: Address, name: string): string | undefined {
  const value = address[name];
  return (Array.isArray(value) ? value[0] : value)?.trim() || undefined;
}

/**
 * A link may name only a store, or only a crop: what it leaves out is filled in, from the store's air where it can be. What
 * was sent blank by the form stays blank, and is asked for.
 */
export function completeAddress(
  address: Address,
  example: Example,
  store: StoreTarget | null,
  stored: StoredSeed | null,
): Address {
  if (!Object.keys(storageLifeSchema.shape).some((field) => address[field] !== undefined)) return address;
  const { crop, ...rest } = example;
  const filled: Address = ownParameter(address, 'constants') ? rest : { crop, ...rest };
  if (store) {
    filled.temperature = String(store.targetTemperatureC);
    filled.moisture = moistureInStore(store, stored?.seed.oilFraction ?? 0)?.toFixed(1) ?? example.moisture;
  }
  for (const [name, value] of Object.entries(address)) if (value !== undefined) filled[name] = value;
  return filled;
}
