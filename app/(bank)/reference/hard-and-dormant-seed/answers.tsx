import type { z } from 'zod';
import { IntervalStrips } from '@/app/_components/interval-strips';
import { Notice } from '@/app/_components/notice';
import { formatCount } from '@/app/_format/figures';
import { boundsOutwards } from '@/app/(bank)/germination/_parts/result-words';
import { dormantShare } from '@/lib/domain/germination/dormancy/dormant-share';
import { aliveWithSideSamples } from '@/lib/domain/germination/dormancy/side-samples';
import { cutResult, tetrazoliumResult } from '@/lib/domain/germination/dormancy/viability-test';
import { binomialInterval } from '@/lib/domain/statistics/binomial-interval';
import type {
  cutSchema,
  sideSamplesSchema,
  tetrazoliumSchema,
  treatedSampleSchema,
} from '@/lib/schemas/calculators/hard-and-dormant-seed';
import { dormantInWords } from './dormant-words';

const inPercent = (proportion: number) => Math.round(proportion * 1000) / 10;
const germinationOf = (successes: number, trials: number) => ({
  proportion: successes / trials,
  interval: binomialInterval({ successes, trials }),
});

/** How much is alive when only some of the hard and fresh seed was looked at. */
export function SideSamplesAnswer({ asked }: { asked: z.infer<typeof sideSamplesSchema> }) {
  const { seeds, normal } = asked;
  const found = aliveWithSideSamples({
    seeds,
    normal,
    hard: { seeds: asked.hard, looked: asked.hardLooked, alive: asked.hardAlive },
    fresh: { seeds: asked.fresh, looked: asked.freshLooked, alive: asked.freshAlive },
  });
  if (!found.ok) {
    const [least, most] = found.between.map(inPercent);
    const kind = found.reason === 'hard-not-looked-at' ? 'hard' : 'fresh';
    return (
      <section className="sheet grid gap-3" aria-label="Answer for side samples">
        <p className="say">
          Nobody has looked at the {kind} seed: of these seeds{' '}
          <b>
            between {least} and {most} %
          </b>{' '}
          are alive, and which it is only a side sample can tell.
        </p>
        <p className="max-w-prose">
          {kind === 'hard'
            ? 'Nick or rub some of the hard seeds and set them again: those that grow are alive.'
            : 'Chill some of the fresh seeds and set them again, or stain or cut them, and count those that are alive.'}
        </p>
      </section>
    );
  }
  const { lower, upper } = boundsOutwards({ interval: found });
  const carried = Math.round(found.carriedOver * seeds);
  return (
    <section className="sheet grid gap-4" aria-label="Answer for side samples">
      <p className="say">
        {inPercent(found.proportion)} % of these seeds are alive; the lot is likely between{' '}
        <b>
          {lower} and {upper} %
        </b>
        .
      </p>
      <IntervalStrips
        strips={[
          { name: 'germinated', ...germinationOf(normal, seeds), quiet: true },
          { name: 'alive', proportion: found.proportion, interval: found },
        ]}
        standard={null}
      />
      <p className="max-w-prose">
        {inPercent(normal / seeds)} % germinated.{' '}
        {carried === 0
          ? 'Every hard and fresh seed was looked at, so that nothing had to be carried over.'
          : `${formatCount(carried)} seeds were looked at by nobody; what the side sample showed was carried over to them, and the limits allow for that.`}
      </p>
    </section>
  );
}

/** Tetrazolium: how much is alive, and how much of that does not germinate. */
export function TetrazoliumAnswer({ asked }: { asked: z.infer<typeof tetrazoliumSchema> }) {
  const { stained, partly, unstained, grew, set } = asked;
  const { seeds, estimate } = tetrazoliumResult({
    stainedNormally: stained,
    stainedAbnormally: partly,
    unstained,
  });
  const { lower, upper } = boundsOutwards(estimate);
  const other = grew === undefined || set === undefined ? null : { germinated: grew, seeds: set };
  const dormant = other && dormantShare({ viability: { alive: stained, seeds }, germination: other });
  return (
    <section className="sheet grid gap-4" aria-label="Answer for tetrazolium">
      <p className="say">
        {formatCount(stained)} of {formatCount(seeds)} seeds stained as living seed does; the lot is likely between{' '}
        <b>
          {lower} and {upper} % alive
        </b>
        .
      </p>
      <IntervalStrips
        strips={[
          { name: 'alive', ...estimate },
          ...(other ? [{ name: 'germinated', ...germinationOf(other.germinated, other.seeds), quiet: true }] : []),
        ]}
        standard={null}
      />
      {dormant && <Dormancy dormant={dormant} way="stained" />}
    </section>
  );
}

/** A cut test: the most that can be alive, and what cleaning could take out. */
export function CutAnswer({ asked }: { asked: z.infer<typeof cutSchema> }) {
  const result = cutResult({
    firm: asked.firm,
    empty: asked.empty,
    insectDamaged: asked.insect,
    dead: asked.rotten,
  });
  const { lower, upper } = boundsOutwards(result.estimate);
  const worthless = boundsOutwards(result.worthless);
  return (
    <section className="sheet grid gap-4" aria-label="Answer for cutting">
      <p className="say">
        {formatCount(asked.firm)} of {formatCount(result.seeds)} seeds were full and firm: likely{' '}
        <b>
          between {lower} and {upper} % of the lot, and no more than that is alive
        </b>
        .
      </p>
      <IntervalStrips
        strips={[
          { name: 'firm', ...result.estimate },
          { name: 'empty or eaten', ...result.worthless, quiet: true },
        ]}
        standard={null}
      />
      <p className="max-w-prose">
        {inPercent(result.worthless.proportion)} % (likely {worthless.lower} to {worthless.upper}) were empty or eaten
        by insects: winnowing or floating may take them out.
        {result.firmOfFull && ` Of the full seeds ${inPercent(result.firmOfFull.proportion)} % were firm.`} A firm seed
        may still be dead: cutting does not show that it is alive.
      </p>
    </section>
  );
}

/** A side sample of the lot, its dormancy broken, beside one set as it was. */
export function TreatedSampleAnswer({ asked }: { asked: z.infer<typeof treatedSampleSchema> }) {
  const { treatedGrew, treatedSet, plainGrew, plainSet } = asked;
  const treated = germinationOf(treatedGrew, treatedSet);
  const { lower, upper } = boundsOutwards(treated);
  const dormant = dormantShare({
    viability: { alive: treatedGrew, seeds: treatedSet },
    germination: { germinated: plainGrew, seeds: plainSet },
  });
  return (
    <section className="sheet grid gap-4" aria-label="Answer for a treated sample">
      <p className="say">
        {inPercent(treated.proportion)} % grew after treatment: at least so much is alive, likely{' '}
        <b>
          between {lower} and {upper} %
        </b>
        .
      </p>
      <IntervalStrips
        strips={[
          { name: 'treated', ...treated },
          { name: 'as it was', ...germinationOf(plainGrew, plainSet), quiet: true },
        ]}
        standard={null}
      />
      <Dormancy dormant={dormant} way="treated" />
    </section>
  );
}

function Dormancy({ dormant, way }: { dormant: ReturnType<typeof dormantShare>; way: 'stained' | 'treated' }) {
  const sentence = dormantInWords(dormant, way);
  if (dormant.verdict === 'contradiction') return <Notice kind="caution">{sentence}</Notice>;
  return <p className="max-w-prose">{sentence}</p>;
}
