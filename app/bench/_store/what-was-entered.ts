import { SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import type { OwnCount, OwnNote, Refusal } from './own-entries';

/** An entry in words, so that it can be written down elsewhere: 'dish 2 on 2026-11-25: 5 normal, 1 dead'. */
export function whatWasEntered(entry: Refusal['entry']): string {
  if (entry.kind === 'count') return `dish ${entry.position} on ${entry.on}: ${foundInWords(entry)}`;
  const where = entry.dish === null ? 'the tray' : `dish ${entry.dish}`;
  if (entry.kind === 'photo') return `photograph of ${where} on ${entry.on}`;
  return `note on ${where} on ${entry.on}: ${(entry as OwnNote).text}`;
}

function foundInWords({ found }: OwnCount): string {
  if (found === null) return 'count taken back';
  const classes = SEED_CLASSES.filter((seedClass) => found[seedClass] > 0);
  return classes.map((seedClass) => `${found[seedClass]} ${seedClass}`).join(', ') || 'nothing found';
}
