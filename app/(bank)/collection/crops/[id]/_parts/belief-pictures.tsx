import { beliefCurve } from '@/lib/domain/longevity/bank-learning/belief-curve';
import type { CropLearning } from '@/lib/domain/longevity/bank-learning/learn-crop-prior';
import { normalQuantile } from '@/lib/domain/statistics/normal-distribution';

/** What was expected of a lot before and what the tests say, as two curves each: initial viability, and rate of ageing. */
export function BeliefPictures({ learning }: { learning: Extract<CropLearning, { ok: true }> }) {
  const { published, suggested, logRate } = learning;
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <BeliefPicture
        title="Alive when fresh, %"
        before={published.initial}
        now={suggested.initial}
        from={-0.2}
        to={3.5}
        ticks={[50, 70, 90, 97, 99.5, 99.9].map((percent) => ({
          x: normalQuantile(percent / 100),
          label: String(percent),
        }))}
      />
      {logRate && (
        <BeliefPicture
          title="Ageing, times as fast as published"
          before={published.logRate}
          now={suggested.logRate}
          from={-2.1}
          to={2.1}
          ticks={[0.2, 0.5, 1, 2, 5].map((times) => ({ x: Math.log(times), label: String(times) }))}
        />
      )}
    </div>
  );
}

interface PictureProps {
  title: string;
  before: { mean: number; sd: number };
  now: { mean: number; sd: number };
  from: number;
  to: number;
  ticks: { x: number; label: string }[];
}

const WIDTH = 360;
const HEIGHT = 120;
const FLOOR = 96;
const TOP = 10;

function BeliefPicture({ title, before, now, from, to, ticks }: PictureProps) {
  const curves = [before, now].map((belief) => beliefCurve(belief, { from, to }));
  const highest = Math.max(...curves.flat().map(({ density }) => density));
  const place = (x: number) => ((x - from) / (to - from)) * WIDTH;
  const [beforePath, nowPath] = curves.map((curve) =>
    curve
      .map(({ x, density }, index) => {
        const y = FLOOR - (density / highest) * (FLOOR - TOP);
        return `${index === 0 ? 'M' : 'L'}${place(x).toFixed(1)} ${y.toFixed(1)}`;
      })
      .join(''),
  );
  return (
    <figure className="grid gap-1">
      <figcaption className="label">
        {title}: <span className="text-ink">dashes, expected before</span>;{' '}
        <b className="text-indigo">line, tests say</b>
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} className="w-full max-w-md" aria-hidden="true">
        <line x1={0} x2={WIDTH} y1={FLOOR} y2={FLOOR} stroke="var(--rule)" />
        {ticks.map(({ x, label }) => (
          <g key={label}>
            <line x1={place(x)} x2={place(x)} y1={FLOOR} y2={FLOOR + 5} stroke="var(--edge)" />
            <text x={place(x)} y={HEIGHT - 4} textAnchor="middle" fontSize={12} fill="var(--ink-2)" className="figures">
              {label}
            </text>
          </g>
        ))}
        <path d={`${nowPath}L${WIDTH} ${FLOOR}L0 ${FLOOR}Z`} fill="var(--indigo-soft)" />
        <path d={beforePath} fill="none" stroke="var(--ink)" strokeWidth={1.5} strokeDasharray="5 4" />
        <path d={nowPath} fill="none" stroke="var(--indigo)" strokeWidth={2.5} />
      </svg>
    </figure>
  );
}
