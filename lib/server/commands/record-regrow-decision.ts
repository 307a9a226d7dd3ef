import 'server-only';
import { type RegrowAction, regrowDecisionSchema } from '@/lib/schemas/regrow-decision';
import { AppError } from '../app-error';
import { newId } from '../new-id';
import { defineCommand } from './command';

const IN_WORDS: Record<RegrowAction, string> = { regrow: 'regrow', 'test-first': 'test first', leave: 'leave' };

/** Records what the steward decided about an accession for a season. Earlier decisions stay; the latest one speaks. */
export const recordRegrowDecision = defineCommand({
  name: 'record-regrow-decision',
  role: 'steward',
  schema: regrowDecisionSchema,
  async run({ tx, person, today, audit }, input) {
    const accession = await tx.accession.findUnique({
      where: { number: input.accession },
      select: { id: true, number: true, name: true },
    });
    if (!accession) {
      throw new AppError('invalid-input', 'That accession is not in the collection.', {
        fieldErrors: { accession: `No accession has the number ${input.accession}.` },
      });
    }
    if (input.season < Number(today.slice(0, 4)) - 1) {
      throw new AppError('invalid-input', 'Some entries need another look. Nothing was saved yet.', {
        fieldErrors: { season: 'This season is over: write this year or a later one.' },
      });
    }
    const lot = input.lotId
      ? await tx.lot.findFirst({
          where: { id: input.lotId, accessionId: accession.id },
          select: { id: true, number: true },
        })
      : null;
    if (input.lotId && !lot) {
      throw new AppError('invalid-input', 'That lot does not belong to this accession.', {
        fieldErrors: { lotId: 'Choose a lot of this accession.' },
      });
    }
    const id = newId();
    await tx.regrowDecision.create({
      data: {
        id,
        accessionId: accession.id,
        lotId: lot?.id ?? null,
        season: input.season,
        action: input.action,
        reason: input.reason,
        byId: person.id,
        byName: person.name,
      },
    });
    const from = lot ? ` from lot ${lot.number}` : '';
    await audit({
      entity: 'accession',
      entityId: accession.id,
      summary: `Decided for ${accession.number} ${accession.name}, season ${input.season}: ${IN_WORDS[input.action]}${from}. ${input.reason}`,
      after: { decisionId: id, action: input.action, season: input.season, lotId: lot?.id ?? null },
    });
    return { id, accessionNumber: accession.number };
  },
});
