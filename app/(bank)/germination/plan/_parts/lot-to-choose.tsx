import Link from 'next/link';
import { Viability } from '@/app/_components/viability';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import type { LotToPlan } from '@/lib/server/queries/lots-to-plan';
import { minutesOf, optionInWords, whyThisTest } from './proposal-words';

interface Props {
  lot: LotToPlan;
  today: string;
  checked: boolean;
}

/** One lot of the plan: ticked to be set, with why it is due, what is believed of it, and what its test would take. */
export function LotToChoose({ lot, today, checked }: Props) {
  const { underTest, proposal } = lot;
  return (
    <li className="grid gap-x-6 gap-y-2 border-t border-rule px-4 py-3 sm:px-5 lg:grid-cols-[minmax(0,17rem)_minmax(0,1fr)_minmax(0,22rem)]">
      <div className="min-w-0">
        {underTest ? (
          <p className="wrap-anywhere font-semibold">{lot.accessionName}</p>
        ) : (
          <label className="flex min-h-11 cursor-pointer items-center gap-3 font-semibold md:min-h-8">
            <input
              type="checkbox"
              name="lot"
              value={lot.lotNumber}
              defaultChecked={checked}
              className="size-6 shrink-0 scroll-my-32 accent-leaf"
            />
            <span className="wrap-anywhere">
              {lot.accessionName}
              <span className="sr-only">, lot {lot.lotNumber}</span>
            </span>
          </label>
        )}
        <Link
          href={lotPath(lot.lotNumber)}
          className="figures ml-9 inline-flex min-h-11 items-center text-sm text-ink md:min-h-8"
        >
          {lot.lotNumber}
        </Link>
      </div>
      <div className="min-w-0">
        <p>{lot.reason}</p>
        <p className="text-sm text-ink-2">
          <DueWords testDueOn={lot.testDueOn} today={today} /> ·{' '}
          {lot.lastTestedOn ? `last tested ${formatDate(lot.lastTestedOn)}` : 'never tested'} ·{' '}
          {formatCount(lot.seedsLeft)} seeds left · alive now{' '}
          <Viability median={lot.viabilityMedian} lower={lot.viabilityLower} upper={lot.viabilityUpper} />
        </p>
      </div>
      {underTest ? (
        <p>
          Test{' '}
          <Link href={testPath(underTest.number)} className="figures text-ink">
            {underTest.number}
          </Link>{' '}
          under way since {formatDate(underTest.setOn)}.
        </p>
      ) : (
        <div className="min-w-0">
          <p className="font-semibold">
            {proposal.chosen ? optionInWords(proposal.chosen) : 'No test'}
            <Work lot={lot} />
          </p>
          <p className="text-sm text-ink-2">{whyThisTest(proposal)}</p>
        </div>
      )}
    </li>
  );
}

function DueWords({ testDueOn, today }: { testDueOn: string | null; today: string }) {
  if (testDueOn === null) return <span>no test due</span>;
  if (testDueOn > today) return <span>due {formatDate(testDueOn)}</span>;
  return <span className="font-semibold text-ochre">due since {formatDate(testDueOn)}</span>;
}

function Work({ lot: { proposal, method } }: { lot: LotToPlan }) {
  const minutes = proposal.chosen ? minutesOf(proposal.chosen, method?.method ?? null) : null;
  return minutes === null ? null : <span className="quiet font-normal"> · about {minutes} min of work</span>;
}
