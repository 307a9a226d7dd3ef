import { yearOf } from '../lib/domain/calendar/calendar-date';
import { nextSeason } from '../lib/domain/calendar/season';
import { recordRegrowDecision } from '../lib/server/commands/record-regrow-decision';
import { DEMO_PERSON } from './demo-person';
import { BANK_HABITS } from './scenarios/brannasay';
import type { WrittenHistory } from './write-history';

/** What the steward decided in earlier seasons and for the coming one, oldest first. */
export async function writeDecisions({ accessionNumbers, lotIds }: WrittenHistory, today: string): Promise<void> {
  const coming = nextSeason(today, BANK_HABITS.sowingMonth);
  // Decisions can be written down for last year's season at the earliest.
  const earliest = yearOf(today) - 1;
  for (const [accession, number] of accessionNumbers) {
    for (const { seasonsBeforeComing, action, lot, reason } of accession.decisions ?? []) {
      const season = coming - seasonsBeforeComing;
      if (season < earliest) continue;
      const lotId = lot === undefined ? undefined : lotIds.get(accession)?.[lot];
      await recordRegrowDecision(DEMO_PERSON, { accession: number, lotId, season, action, reason });
    }
  }
}
