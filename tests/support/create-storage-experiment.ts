import { createStorageExperiment } from '@/lib/server/commands/create-storage-experiment';
import { STEWARD } from './people';

/** One lot at two moistures and two temperatures, counted at four times: enough for KE and CW. */
export const EXPERIMENT_TABLE = [
  'Lot;Moisture;Temperature;Days;Sown;Germinated',
  ...['L-1;5;35;0;50;48', 'L-1;5;35;60;50;44', 'L-1;5;35;140;50;35', 'L-1;5;35;260;50;16'],
  ...['L-1;10;35;0;50;48', 'L-1;10;35;6;50;43', 'L-1;10;35;13;50;32', 'L-1;10;35;24;50;15'],
  ...['L-1;5;20;0;50;49', 'L-1;5;20;250;50;43', 'L-1;5;20;500;50;36', 'L-1;5;20;900;50;17'],
  ...['L-1;10;20;0;50;47', 'L-1;10;20;25;50;42', 'L-1;10;20;50;50;31', 'L-1;10;20;85;50;17'],
].join('\n');

/** A storage experiment through its command; override what the test is about. */
export async function makeStorageExperiment(overrides: Record<string, unknown> = {}): Promise<{ id: string }> {
  const input = { name: 'Leek in jars', species: 'Allium porrum', table: EXPERIMENT_TABLE, ...overrides };
  return createStorageExperiment(STEWARD, input);
}
