import type { Prisma } from '@/generated/prisma/client';
import { SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import { type CountToKeep, type NoteToKeep, sentEntriesSchema, sentEntrySchema } from '@/lib/schemas/bench-entries';
import type { EntryAnswer, EntryAnswers } from '@/lib/schemas/bench-wire';
import {
  countRow,
  dayProblem,
  loadBenchNeeds,
  noSuchDish,
  noteRow,
  sayTheSameEntry,
  type TrayAtBench,
  UNKNOWN_TRAY,
  USED_MARK,
} from './bench-needs';
import { defineCommand } from './command';

/**
 * Takes in what phones at the bench have written down. Every entry stands by itself: it is kept, known already, or
 * refused in words, whatever becomes of the others. What a closed or given-up tray gets late is kept too, and waits until
 * somebody opens it again.
 */
export const addBenchEntries = defineCommand({
  name: 'add-bench-entries',
  role: 'volunteer',
  schema: sentEntriesSchema,
  async run({ tx, person, today, audit }, { deviceId, entries }): Promise<EntryAnswers> {
    const needs = await loadBenchNeeds(tx, entries);
    const refused = new Set<string>();
    const counts: Prisma.TrayCountCreateManyInput[] = [];
    const notes: Prisma.TrayNoteCreateManyInput[] = [];
    const kept = new Map<TrayAtBench, { counts: CountToKeep[]; notes: NoteToKeep[] }>();

    const answers = entries.map((sent): EntryAnswer => {
      const refuse = (message: string): EntryAnswer => {
        refused.add(sent.id);
        return { id: sent.id, outcome: 'refused', message };
      };
      const parsed = sentEntrySchema.safeParse(sent);
      if (!parsed.success) return refuse(parsed.error.issues[0]?.message ?? 'Enter it again.');
      const entry = parsed.data;
      const row = entry.kind === 'count' ? countRow(entry, { deviceId, person }) : noteRow(entry, { deviceId, person });
      const known = needs.known.get(entry.id);
      if (known) {
        if (sayTheSameEntry(known, row)) return { id: entry.id, outcome: 'known' };
        return refuse(USED_MARK);
      }
      const tray = needs.trays.get(entry.trayId);
      if (!tray) return refuse(UNKNOWN_TRAY);
      const problem = dayProblem(tray, entry.on, today) ?? placeProblem(tray, entry, needs.known, refused);
      if (problem) return refuse(problem);
      needs.known.set(entry.id, row);
      const ofTray = kept.get(tray) ?? { counts: [], notes: [] };
      kept.set(tray, ofTray);
      if (entry.kind === 'count') {
        ofTray.counts.push(entry);
        counts.push(row as Prisma.TrayCountCreateManyInput);
      } else {
        ofTray.notes.push(entry);
        notes.push(row as Prisma.TrayNoteCreateManyInput);
      }
      return { id: entry.id, outcome: 'kept' };
    });

    if (counts.length > 0) await tx.trayCount.createMany({ data: counts });
    if (notes.length > 0) await tx.trayNote.createMany({ data: notes });
    for (const [tray, ofTray] of kept) {
      await audit({
        entity: 'tray',
        entityId: tray.id,
        summary: summaryOf(tray, ofTray),
        after: { deviceId, ...ofTray },
      });
    }
    if (kept.size === 0) {
      const summary = `Took in nothing new from the bench: ${entries.length - refused.size} known already, ${refused.size} refused`;
      await audit({ entity: 'bench', entityId: deviceId, summary, after: { answers } });
    }
    return { answers };
  },
});

function placeProblem(
  tray: TrayAtBench,
  entry: CountToKeep | NoteToKeep,
  known: ReadonlyMap<string, object>,
  refused: ReadonlySet<string>,
): string | null {
  if (entry.kind === 'note') return noSuchDish(tray, entry.dish);
  const dish = tray.dishes.find(({ id }) => id === entry.dishId);
  if (!dish) return noSuchDish(tray, 0);
  const stray = entry.replaces.some((id) => {
    // What it corrects was itself refused just now: there is nothing to replace, and the count holds.
    if (refused.has(id)) return false;
    const before = known.get(id) as { dishId?: string; on?: string } | undefined;
    return before?.dishId !== entry.dishId || before.on !== entry.on;
  });
  return stray ? 'It corrects a count that is not here. Look at the dish and enter it again.' : null;
}

function summaryOf(tray: TrayAtBench, { counts, notes }: { counts: CountToKeep[]; notes: NoteToKeep[] }): string {
  const position = (dishId: string) => tray.dishes.find(({ id }) => id === dishId)?.position;
  const said = [
    ...counts.map(({ dishId, on, found }) => {
      const classes = SEED_CLASSES.filter((seedClass) => found && found[seedClass] > 0);
      const what = classes.map((seedClass) => `${found?.[seedClass]} ${seedClass}`).join(', ') || 'nothing found';
      return `dish ${position(dishId)} on ${on} ${found === null ? 'taken back' : what}`;
    }),
    ...(notes.length > 0 ? [`${notes.length} ${notes.length === 1 ? 'note' : 'notes'}`] : []),
  ];
  const late = tray.status === 'open' ? '' : ` (${tray.status === 'closed' ? 'closed already' : 'given up'})`;
  return `Counted tray ${tray.number}${late}: ${said.join('; ')}`;
}
