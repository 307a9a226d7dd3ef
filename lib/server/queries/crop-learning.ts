import 'server-only';
import { type FiguresToAdopt, figuresInOneLine } from '@/lib/domain/longevity/bank-learning/figures-to-adopt';
import { connections, reader } from '../database/connections';
import { countTestedLots, isLearnt, type LearntOfCrop, learnCrop } from '../judging/learn-crop';
import { today } from '../today';

/** Up to so many tested lots a page reckons without being asked: a tenth of a second or two. */
const RECKONED_UNASKED = 200;

export type CropLearningAnswer =
  | { kind: 'learnt'; learnt: LearntOfCrop; adopted: AdoptedPriors | null }
  /** many lots: reckoned when somebody asks for it */
  | { kind: 'on-request'; testedLots: number }
  | { kind: 'no-constants' };

/**
 * What the crop's own lots say.
 *
 * @param asked  somebody asked for it, so that many lots may take their time
 */
export async function getCropLearning(cropId: string, asked: boolean): Promise<CropLearningAnswer> {
  const { rows } = connections();
  const day = today();
  if (!asked && !isLearnt(rows, cropId, day)) {
    const testedLots = countTestedLots(rows, cropId);
    if (testedLots > RECKONED_UNASKED) return { kind: 'on-request', testedLots };
  }
  const learnt = learnCrop(rows, cropId, day);
  return learnt ? { kind: 'learnt', learnt, adopted: await findAdoptedPriors(cropId) } : { kind: 'no-constants' };
}

/** The learnt figures that a crop's judgements rest on now. */
export interface AdoptedPriors {
  on: Date;
  byName: string;
  lots: number;
  tests: number;
  /** as `figuresInOneLine` writes them */
  figures: string;
}

/** The last figures that were taken over, as long as the crop still has them; null otherwise. */
export async function findAdoptedPriors(cropId: string): Promise<AdoptedPriors | null> {
  const [entry, crop] = await Promise.all([
    reader().auditEntry.findFirst({
      where: { entity: 'crop', entityId: cropId, command: 'adopt-learnt-priors' },
      orderBy: { id: 'desc' },
      select: { at: true, byName: true, after: true },
    }),
    reader().crop.findUnique({
      where: { id: cropId },
      select: { priorInitialMean: true, priorInitialSd: true, priorLogRateMean: true, priorLogRateSd: true },
    }),
  ]);
  if (!entry?.after || !crop) return null;
  const after = JSON.parse(entry.after) as FiguresToAdopt & { restsOnLots: number; restsOnTests: number };
  const same =
    after.priorInitialMean === crop.priorInitialMean &&
    after.priorInitialSd === crop.priorInitialSd &&
    (after.priorLogRateMean ?? null) === crop.priorLogRateMean &&
    (after.priorLogRateSd ?? null) === crop.priorLogRateSd;
  if (!same) return null;
  return {
    on: entry.at,
    byName: entry.byName,
    lots: after.restsOnLots,
    tests: after.restsOnTests,
    figures: figuresInOneLine({
      priorInitialMean: after.priorInitialMean,
      priorInitialSd: after.priorInitialSd,
      priorLogRateMean: after.priorLogRateMean ?? undefined,
      priorLogRateSd: after.priorLogRateSd ?? undefined,
    }),
  };
}
