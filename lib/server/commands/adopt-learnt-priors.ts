import { figuresInOneLine, figuresToAdopt } from '@/lib/domain/longevity/bank-learning/figures-to-adopt';
import { adoptLearntPriorsSchema } from '@/lib/schemas/adopt-learnt-priors';
import { AppError, notFound } from '../app-error';
import { connections } from '../database/connections';
import { learnCrop } from '../judging/learn-crop';
import { defineCommand } from './command';
import { describeChanges } from './describe-changes';
import { refuseStale } from './stale-version';
import { CROP_LABELS } from './update-crop';

const PRIORS = {
  priorInitialMean: true,
  priorInitialSd: true,
  priorLogRateMean: true,
  priorLogRateSd: true,
  version: true,
} as const;

/**
 * Takes over for a crop what its own lots' tests say: they become the bank's own figures, and its lots are judged by
 * them. The figures are reckoned anew here; the form only says which ones its reader saw. Emptying the crop's own
 * figures (update-crop) undoes it.
 */
export const adoptLearntPriors = defineCommand({
  name: 'adopt-learnt-priors',
  role: 'steward',
  schema: adoptLearntPriorsSchema,
  async run({ tx, today, audit, rejudge }, { id, version, shown }): Promise<{ id: string }> {
    const was = await tx.crop.findUnique({ where: { id }, select: { name: true, ...PRIORS } });
    if (!was) throw notFound('This crop');
    const record = { entity: 'crop', entityId: id };
    await refuseStale(tx, { ...record, called: `Crop ${was.name}` }, version, was.version, CROP_LABELS);
    const learning = learnCrop(connections().rows, id, today)?.learning;
    if (!learning?.ok) throw new AppError('refused', 'The tests of this crop say too little to take over.');
    const figures = figuresToAdopt(learning);
    if (figuresInOneLine(figures) !== shown) {
      throw new AppError(
        'conflict',
        'The figures have changed since this page was opened. Load it again and look at the new ones first.',
      );
    }
    const { name, ...before } = was;
    const changes = describeChanges(before, { ...before, ...figures }, CROP_LABELS);
    if (!changes) throw new AppError('refused', "These are the crop's figures already.");
    const data = { ...figures, version: version + 1 };
    await tx.crop.update({ where: { id }, data });
    const lots = await tx.lot.findMany({ where: { accession: { cropId: id } }, select: { id: true } });
    rejudge(lots.map((lot) => lot.id));
    await audit({
      ...record,
      summary: `Took over for crop ${name} what ${learning.lots} lots and ${learning.tests} tests say: ${changes}`,
      before,
      after: { ...before, ...data, restsOnLots: learning.lots, restsOnTests: learning.tests },
    });
    return { id };
  },
});
