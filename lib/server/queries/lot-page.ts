import 'server-only';
import type { WhatIf } from '@/lib/schemas/what-if';
import { connections, reader } from '../database/connections';
import type { EvaluatedLot } from '../judging/evaluate-lot';
import { evaluateAccession } from '../judging/judge-lots';
import { type CropJudging, loadCropJudging } from '../judging/load-crop-judging';
import { loadLots } from '../judging/load-lots';
import { type StoreClimates, storeClimates } from '../judging/store-climates';
import { LOT_FACTS } from '../lot-facts';
import { today } from '../today';
import { type LotForecast, lotForecast } from './lot-forecast';
import { lotStrips, type PacketStrip } from './lot-strips';
import { type PacketForecast, packetForecasts } from './packet-forecast';

/** What a lot's page says of it, apart from its packets and ledger. */
export interface LotPage {
  id: string;
  number: string;
  harvestedOn: string;
  generation: number;
  isolation: string;
  plantsHarvested: number | null;
  cleanWeightG: number | null;
  thousandSeedWeightG: number | null;
  treatment: string | null;
  notes: string | null;
  accession: { id: string; number: string; name: string };
  crop: CropJudging;
  placeName: string | null;
  evaluated: EvaluatedLot;
  forecast: LotForecast | null;
  /** by packet id */
  packetForecasts: Map<string, PacketForecast>;
  /** the storage history of each packet, the fullest first */
  strips: PacketStrip[];
}

/**
 * @param number  lot number
 * @param whatIf  another store, temperature or moisture to draw beside the forecast
 * @returns null when there is no such lot
 */
export async function getLotPage(number: string, whatIf: WhatIf): Promise<LotPage | null> {
  const lot = await reader().lot.findUnique({
    where: { number },
    select: {
      id: true,
      number: true,
      ...LOT_FACTS,
      accession: { select: { id: true, number: true, name: true, lots: { select: { id: true } } } },
    },
  });
  if (!lot) return null;
  const { evaluated, crop, climates } = evaluateOne(
    lot.id,
    lot.accession.lots.map(({ id }) => id),
  );
  const { lots: _, ...accession } = lot.accession;
  const storeId = evaluated.mainPacket?.placements.at(-1)?.storeId;
  return {
    ...lot,
    accession,
    crop,
    placeName: storeId ? climates.nameOf(storeId) : null,
    evaluated,
    forecast: lotForecast(evaluated, crop, climates, whatIf, today()),
    packetForecasts: packetForecasts(evaluated, crop, climates, today()),
    strips: lotStrips(evaluated, crop, climates, today()),
  };
}

/** One lot as evaluated now, in the company of the other lots of its accession. */
export function evaluateOne(
  lotId: string,
  lotIds: string[],
): { evaluated: EvaluatedLot; crop: CropJudging; climates: StoreClimates } {
  const { rows } = connections();
  const lots = loadLots(rows, lotIds);
  const [crop] = loadCropJudging(rows, [lots[0]?.cropId ?? '']).values();
  const climates = storeClimates(rows);
  if (!crop) throw new Error(`the crop of lot ${lotId} does not exist`);
  const evaluated = evaluateAccession(lots, crop, climates, today()).find(({ lot }) => lot.id === lotId);
  if (!evaluated) throw new Error(`lot ${lotId} vanished while it was read`);
  return { evaluated, crop, climates };
}

/** Every lot of an accession as evaluated now, for the page on which its decision is taken. */
export async function evaluateLotsOf(accessionId: string): Promise<{ lots: EvaluatedLot[]; crop: CropJudging | null }> {
  const ids = await reader().lot.findMany({ where: { accessionId }, select: { id: true } });
  const { rows } = connections();
  const lots = loadLots(
    rows,
    ids.map(({ id }) => id),
  );
  const [crop = null] = loadCropJudging(rows, [lots[0]?.cropId ?? '']).values();
  return { lots: crop ? evaluateAccession(lots, crop, storeClimates(rows), today()) : [], crop };
}
