import { Caption } from '@/app/_components/caption';
import { ForecastChartLater } from '@/app/_components/forecast-chart-later';
import { ScrollBox } from '@/app/_components/scroll-box';
import { formatChance, formatDate, formatPercent, formatPercentFigure } from '@/app/_format/figures';
import { thresholdPercent } from '@/lib/domain/regrow/threshold';
import { yearTicks } from '@/lib/server/queries/lot-forecast';
import type { Belief, WhatWasLearnt } from '@/lib/server/queries/what-was-learnt';
import { learntInWords, namesOf, rangeInWords, seasonFigure } from './learnt-words';

/** The lot's forecast before and after this test, in one picture: what did it teach? */
export function LearntPart({ learnt, testNumber }: { learnt: WhatWasLearnt; testNumber: string }) {
  return (
    <section className="sheet grid gap-4" aria-labelledby="learnt-title">
      <h2 id="learnt-title">What did we learn?</h2>
      {learnt.ok ? (
        <Compared learnt={learnt} testNumber={testNumber} />
      ) : (
        <p className="quiet">There is no forecast to compare: {learnt.reason}.</p>
      )}
    </section>
  );
}

type Learnt = Extract<WhatWasLearnt, { ok: true }>;

function Compared({ learnt, testNumber }: { learnt: Learnt; testNumber: string }) {
  const { before, now } = learnt;
  const names = namesOf(learnt);
  const rows: [string, string, string][] = [
    ['most likely alive today', formatPercent(before.viability.median), formatPercent(now.viability.median)],
    ['nine times in ten between', rangeInWords(before), rangeInWords(now)],
    ['the line', formatPercent(before.threshold), formatPercent(now.threshold)],
    ['chance of being below it', formatChance(before.chanceBelow), formatChance(now.chanceBelow)],
    ['next test', dateOrNone(before), dateOrNone(now)],
    ['last safe season', seasonFigure(before.lastSafeSeason), seasonFigure(now.lastSafeSeason)],
  ];
  return (
    <>
      <Caption text={learntInWords(learnt)} />
      <ForecastChartLater {...chartOf(learnt, testNumber)} />
      <p className="-mt-2 text-sm text-ink-2">
        <b className="text-indigo">Line and band</b>: {names.now}, nine times in ten.{' '}
        <b className="text-leaf">Dots and paler band</b>: {names.before}. <b className="text-madder">Dashes</b>: the
        line. <b className="text-ink">Filled circle</b>: this test; open ones: the others.
      </p>
      <ScrollBox label="What is believed of the lot without and with this test">
        <table className="ledger tight">
          <thead>
            <tr>
              <th scope="col">of the lot</th>
              <th scope="col" className="number">
                {names.before}
              </th>
              <th scope="col" className="number">
                {names.now}
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, then, after]) => (
              <tr key={name}>
                <th scope="row" className="row-head min-w-0! py-2! font-normal!">
                  {name}
                </th>
                <td className="number py-2!">{then}</td>
                <td className="number py-2!">{after}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      <CurveTable learnt={learnt} />
    </>
  );
}

const dateOrNone = ({ nextTestOn }: Belief) => (nextTestOn === null ? 'none' : formatDate(nextTestOn));

function CurveTable({ learnt }: { learnt: Learnt }) {
  const names = namesOf(learnt);
  return (
    <details>
      <summary className="min-h-11 w-fit cursor-pointer py-2 font-semibold">The picture's figures in a table</summary>
      <ScrollBox label="Viability over the years without and with this test">
        <table className="ledger">
          <thead>
            <tr>
              <th scope="col">date</th>
              <th scope="col" className="number">
                alive {names.before}
              </th>
              <th scope="col" className="number">
                alive {names.now}
              </th>
            </tr>
          </thead>
          <tbody>
            {learnt.now.table.map((point, index) => (
              <tr key={point.day}>
                <td className="py-1.5! whitespace-nowrap">
                  {formatDate(point.date)}
                  {point.day === learnt.todayDay && <span className="quiet"> today</span>}
                </td>
                <td className="number py-1.5!">{pointInWords(learnt.before.table[index])}</td>
                <td className="number py-1.5!">{pointInWords(point)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </details>
  );
}

function pointInWords(point: Belief['table'][number] | undefined): string {
  if (!point) return '–';
  return `${formatPercent(point.median)} (${formatPercentFigure(point.lower)}–${formatPercentFigure(point.upper)})`;
}

function chartOf(learnt: Learnt, testNumber: string) {
  const { before, now, todayDay, tests } = learnt;
  const names = namesOf(learnt);
  const [from, to] = [now.curve[0]?.day ?? 0, now.curve.at(-1)?.day ?? 1];
  return {
    curve: now.curve.map((point, index) => {
      const earlier = before.curve[index];
      return {
        day: point.day,
        median: percent(point.median),
        band: bandOf(point),
        ...(earlier && { alternative: percent(earlier.median), alternativeBand: bandOf(earlier) }),
      };
    }),
    tests: tests.map((test) => ({
      day: test.day,
      percent: percent(test.proportion),
      error: [percent(test.proportion - test.lower), percent(test.upper - test.proportion)] as [number, number],
      isMain: test.isThis,
    })),
    threshold: percent(now.threshold),
    thresholdLabel: `the line, ${thresholdPercent(now.threshold)}`,
    todayDay,
    testDueDay: null,
    lastSafe: seasonMark(now, `last safe season ${names.now}`),
    otherLastSafe: seasonMark(before, `last safe season ${names.before}`),
    events: [],
    yearTicks: yearTicks(from, to),
    medianName: `${names.now}, 9 in 10`,
    alternativeName: names.before,
    label: `Viability of lot ${learnt.lotNumber} as believed ${names.before} ${testNumber} and ${names.now}: today ${formatPercentFigure(before.viability.median)} percent and ${formatPercentFigure(now.viability.median)} percent. The tables below have the same figures.`,
  };
}

const seasonMark = ({ lastSafeDay }: Belief, label: string) =>
  lastSafeDay === null ? null : { day: lastSafeDay, label };

const percent = (proportion: number) => Math.round(proportion * 1000) / 10;
const bandOf = ({ lower, upper }: { lower: number; upper: number }): [number, number] => [
  percent(lower),
  percent(upper),
];
