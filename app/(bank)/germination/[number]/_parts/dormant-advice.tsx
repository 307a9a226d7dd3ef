import Link from 'next/link';
import { dormantNextSteps } from '@/lib/domain/germination/dormancy/next-steps';
import { totalByClass } from '@/lib/domain/germination/seed-classes';
import type { GerminationTestDetail } from '@/lib/server/queries/germination-test-detail';
import { Source } from '../../_parts/method-card';

interface Props {
  test: GerminationTestDetail;
  trayNumber: string | null;
  mayRecord: boolean;
}

/** What to do about seed that stayed hard or fresh. */
export function DormantAdvice({ test, trayNumber, mayRecord }: Props) {
  const { hard, fresh } = totalByClass(test.replicates);
  const preTreatment = test.crop.methods.find((method) => method.preTreatment !== null)?.preTreatment ?? null;
  const steps = dormantNextSteps({ hard, fresh, preTreatment });
  if (steps.length === 0 || test.correctedByNumber !== null) return null;
  const tray = trayNumber === null ? '' : `&tray=${encodeURIComponent(trayNumber)}`;
  return (
    <section className="sheet grid gap-3" aria-labelledby="dormant-title">
      <h2 id="dormant-title">{seedLeftInWords(hard, fresh)}: is it alive?</h2>
      <ul className="grid list-disc gap-3 pl-5">
        {steps.map(({ step, text, mark, source }) => (
          <li key={step} className="max-w-prose">
            {text}
            <Source mark={mark} source={source} />
          </li>
        ))}
      </ul>
      {mayRecord && (
        <Link
          href={`/germination/viability/new?lot=${encodeURIComponent(test.lot.number)}${tray}`}
          className="button justify-self-start"
        >
          Write down a tetrazolium or cut test
        </Link>
      )}
    </section>
  );
}

function seedLeftInWords(hard: number, fresh: number): string {
  const parts = [hard > 0 ? `${hard} hard` : '', fresh > 0 ? `${fresh} fresh` : ''].filter(Boolean);
  return `${parts.join(' and ')} ${hard + fresh === 1 ? 'seed' : 'seeds'}`;
}
