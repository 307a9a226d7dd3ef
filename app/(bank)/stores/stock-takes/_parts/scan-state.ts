import type { PacketInStockTake } from '@/lib/server/queries/stock-take-packet';

/** What the counting place shows after each entry: the packet in hand, and one sentence about it. */
export interface ScanState {
  /** rises with every answer */
  attempt: number;
  packet: PacketInStockTake | null;
  said: string;
  kind: 'none' | 'done' | 'note' | 'error';
  /** set when the refusal was about who is asking */
  refused?: 'sign-in-needed' | 'not-allowed';
}

export const nothingScanned: ScanState = { attempt: 0, packet: null, said: '', kind: 'none' };
