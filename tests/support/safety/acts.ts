import type { Act, Attempt } from './acts/act';
import { MOVING_ACTS } from './acts/moving-acts';
import { PACKET_ACTS } from './acts/packet-acts';
import { SHARE_ACTS } from './acts/share-acts';
import { STOCK_TAKE_ACTS } from './acts/stock-take-acts';
import { STORE_ACTS } from './acts/store-acts';
import { TEST_ACTS } from './acts/test-acts';
import { TRAY_ACTS } from './acts/tray-acts';
import { TRAY_END_ACTS } from './acts/tray-end-acts';
import type { Chooser } from './chooser';

/** Everything that hands do to packets and stores, by what they do. A new command gets an act in the file of its kind. */
export const ACTS: Record<string, Act> = {
  ...PACKET_ACTS,
  ...MOVING_ACTS,
  ...STORE_ACTS,
  ...STOCK_TAKE_ACTS,
  ...TEST_ACTS,
  ...TRAY_ACTS,
  ...TRAY_END_ACTS,
  ...SHARE_ACTS,
};

/** Names of acts to choose from: what takes several steps comes more often, so that its last step comes at all. */
export const ACT_NAMES = [
  ...Object.keys(ACTS),
  ...['take stock', 'take stock', 'take stock', 'share', 'share', 'log readings', 'merge', 'split'],
  ...['finish a tray', 'finish a tray', 'finish a tray', 'finish a tray', 'reopen a tray', 'reopen a tray'],
  ...['count at the bench', 'share', 'log readings', 'take readings back'],
  ...['set trays', 'set trays', 'give up a tray', 'set the next group', 'set the next group'],
];

/** Does it, as the person, through the command itself. */
export const perform = ({ command, person, input }: Attempt): Promise<unknown> => command(person, input);

/** One of these acts, chosen. */
export function chooseAttempt(choose: Chooser, names: readonly string[] = ACT_NAMES): Attempt | null {
  return ACTS[choose.one(names) ?? '']?.(choose) ?? null;
}
