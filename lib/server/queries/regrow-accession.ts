import 'server-only';
import { reader } from '../database/connections';
import type { EvaluatedLot } from '../judging/evaluate-lot';
import type { CropJudging } from '../judging/load-crop-judging';
import { evaluateLotsOf } from './lot-page';
import { type Decision, findDecisions } from './regrow';

export interface RegrowAccession {
  id: string;
  number: string;
  name: string;
  cropName: string;
  sentence: string;
  action: 'regrow' | 'test-first' | 'leave';
  season: number | null;
  sowFromLotNumber: string | null;
  lots: EvaluatedLot[];
  crop: CropJudging | null;
  decisions: (Decision & { lotId: string | null })[];
}

/** One accession with all its lots as evaluated now and every decision on it; null when there is no such accession. */
export async function getRegrowAccession(number: string): Promise<RegrowAccession | null> {
  const accession = await reader().accession.findUnique({
    where: { number },
    select: {
      id: true,
      number: true,
      name: true,
      crop: { select: { name: true } },
      judgement: { select: { sentence: true, action: true, season: true, sowFromLotId: true } },
    },
  });
  if (!accession) return null;
  const [{ lots, crop }, decisions] = await Promise.all([evaluateLotsOf(accession.id), findDecisions(accession.id)]);
  const { judgement } = accession;
  return {
    id: accession.id,
    number: accession.number,
    name: accession.name,
    cropName: accession.crop.name,
    sentence: judgement?.sentence ?? 'No lot yet.',
    action: (judgement?.action ?? 'leave') as RegrowAccession['action'],
    season: judgement?.season ?? null,
    sowFromLotNumber: lots.find(({ lot }) => lot.id === judgement?.sowFromLotId)?.lot.number ?? null,
    lots: lots.toSorted((a, b) => b.judgement.urgency - a.judgement.urgency),
    crop,
    decisions,
  };
}
