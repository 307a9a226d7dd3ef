import { z } from 'zod';
import { sentPhotoSchema } from '@/lib/schemas/bench-entries';
import type { EntryAnswer } from '@/lib/schemas/bench-wire';
import { dayProblem, loadBenchNeeds, noSuchDish, sayTheSameEntry, UNKNOWN_TRAY, USED_MARK } from './bench-needs';
import { defineCommand } from './command';

const schema = sentPhotoSchema.extend({ width: z.int().min(1), height: z.int().min(1), bytes: z.int().min(1) });

/** Writes down a photograph of a tray or a dish, whose file lies in the data folder already. */
export const addBenchPhoto = defineCommand({
  name: 'add-bench-photo',
  role: 'volunteer',
  schema,
  async run({ tx, person, today, audit }, { width, height, bytes, ...photo }): Promise<EntryAnswer> {
    const { id, trayId, dish, on, deviceId } = photo;
    const record = { entity: 'tray', entityId: trayId };
    const answer = async (outcome: EntryAnswer['outcome'], summary: string, message?: string): Promise<EntryAnswer> => {
      await audit({ ...record, summary, after: { ...photo, width, height, bytes } });
      return { id, outcome, ...(message === undefined ? {} : { message }) };
    };
    const row = { id, trayId, dish, on, kind: 'photo', text: null, deviceId, madeAt: new Date(photo.madeAt) };
    const needs = await loadBenchNeeds(tx, [photo]);
    const known = needs.known.get(id);
    if (known && sayTheSameEntry(known, row)) return answer('known', 'A photograph that is here already came again');
    const tray = needs.trays.get(trayId);
    const problem = known ? USED_MARK : tray ? (dayProblem(tray, on, today) ?? noSuchDish(tray, dish)) : UNKNOWN_TRAY;
    if (problem !== null) return answer('refused', `Refused a photograph: ${problem}`, problem);
    const by = { byId: person.id, byName: person.name };
    await tx.trayNote.create({ data: { ...row, width, height, bytes, ...by } });
    return answer('kept', `Photographed ${dish === null ? '' : `dish ${dish} of `}tray ${tray?.number} on ${on}`);
  },
});
