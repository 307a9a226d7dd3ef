import type { ReactNode } from 'react';
import { TableHead } from '@/app/_components/table-head';
import { formatPercent, formatPercentFigure } from '@/app/_format/figures';
import type { DayNotReached, DayReached } from '@/lib/domain/germination/time-course/day-reached';
import type { FittedCurve } from '@/lib/domain/germination/time-course/fitted-curve';
import { fittedDay, fittedShare } from '@/lib/domain/germination/time-course/fitted-day';
import type { GerminationSpeed } from '@/lib/domain/germination/time-course/germination-speed';
import type { TimeCourse } from '@/lib/domain/germination/time-course/summarise-time-course';
import { dayRange, formatDays } from './course-words';

type Row = readonly [name: string, figure: string, range: string, meaning: ReactNode];

const percentRange = (lower: number, upper: number) => `${formatPercentFigure(lower)}–${formatPercent(upper)}`;

/** Every figure with its interval and what it means. */
export function CourseFigures({ course, middle }: { course: TimeCourse; middle: GerminationSpeed | null }) {
  const { curve, speed, uniformity, fit } = course;
  const { isOneStretch } = course.cautions;
  const rows: Row[] = [
    [
      'final germination',
      formatPercent(curve.final.germinated),
      percentRange(curve.final.lower, curve.final.upper),
      `of ${curve.seeds} seeds set, by day ${formatDays(curve.final.day)}`,
    ],
    reachedRow(
      'T50: half of the germinated',
      course.halfOfGerminated,
      isOneStretch,
      'the usual half time: speed alone',
    ),
    reachedRow('half of all seed set', course.halfOfSet, isOneStretch, 'mixes speed and final germination'),
  ];
  if (uniformity && !isOneStretch) {
    rows.push(
      [
        'uniformity: T75 − T25',
        formatDays(uniformity.middleHalfDays),
        '',
        'days for the middle half of the germinated',
      ],
      ['from T10 to T90', formatDays(uniformity.tenToNinetyDays), '', 'days from the first tenth to the last'],
    );
  }
  if (speed.ok) rows.push(...speedRows(speed, middle));
  if (fit.ok) {
    rows.push(
      [
        'able to germinate',
        formatPercent(fit.limit),
        percentRange(fit.limitInterval.lower, fit.limitInterval.upper),
        'where the fitted curve levels off',
      ],
      [
        'middle day of the fitted curve',
        formatDays(fit.middleDay),
        `${formatDays(fit.middleDayInterval.lower)}–${formatDays(fit.middleDayInterval.upper)}`,
        'half of those able to germinate',
      ],
      fittedHalf(fit),
      [
        'steepness of the fitted curve',
        fit.steepness.toFixed(1),
        `± ${fit.standardErrors.steepness.toFixed(1)}`,
        `${fit.shape}; larger is more even (± one standard error)`,
      ],
    );
  }
  return (
    <table className="ledger stacked">
      <caption className="sr-only">Figures of the time course</caption>
      <TableHead columns={['figure', 'found', 'likely (95 %)', 'meaning']} words={['figure', 'meaning']} />
      <tbody>
        {rows.map(([name, figure, range, meaning]) => (
          <tr key={name}>
            <th scope="row" className="row-head">
              {name}
            </th>
            <td className="number" data-label="found">
              {figure}
            </td>
            <td className="number" data-label="likely (95 %)">
              {range || '–'}
            </td>
            <td className="text-sm">{meaning}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function reachedRow(name: string, reached: DayReached | DayNotReached, isOneStretch: boolean, meaning: string): Row {
  if (!reached.ok) {
    return [name, '–', '', reached.reason === 'not-reached' ? 'not reached while watched' : 'no seed germinated'];
  }
  const { between, lowerByInspection: lower, upperByInspection: upper } = reached;
  const stretch = `${formatDays(between.fromDay)}–${formatDays(between.toDay)}`;
  if (isOneStretch) return [name, `day ${stretch}`, '', 'all were found at one inspection: no more is known'];
  const even =
    lower === null || upper === null
      ? `taken as even within days ${stretch}`
      : `taken as even between inspections; without that, days ${formatDays(lower)}–${formatDays(upper)}`;
  return [name, `day ${formatDays(reached.day)}`, dayRange(reached), `${meaning}; ${even}`];
}

/** The half time that needs no even germination between inspections, and reaches past the last of them. */
function fittedHalf(fit: FittedCurve): Row {
  const name = 'half of all seed set, fitted curve';
  const half = fittedDay(fit, { share: 0.5, of: 'set' });
  if (!half.ok) return [name, '–', '', 'the fitted curve never rises so far'];
  return [
    name,
    `day ${formatDays(half.day)}`,
    `${formatDays(half.lower)}–${formatDays(half.upper)}`,
    'read off the curve',
  ];
}

function speedRows(speed: GerminationSpeed, middle: GerminationSpeed | null): Row[] {
  const spread = speed.standardDeviationDays;
  return [
    [
      'mean germination time',
      `${formatDays(speed.meanDays)} days`,
      speed.standardErrorDays === null ? '' : `± ${speed.standardErrorDays.toPrecision(2)}`,
      middle
        ? `dated to the inspection that found them (± one standard error); dated half-way to the one before: ${formatDays(middle.meanDays)}`
        : 'dated to the inspection that found them',
    ],
    [
      'spread of the times',
      spread === null ? '–' : `${formatDays(spread)} days`,
      '',
      speed.coefficientOfVariation === null
        ? 'one seed has no spread'
        : speed.firstDay === speed.lastDay
          ? 'all were found at one inspection'
          : `standard deviation; ${formatPercent(speed.coefficientOfVariation)} of the mean`,
    ],
    [
      'speed: Σ seeds / day',
      speed.seedsPerDay.toFixed(2),
      '',
      `${speed.seedsPerDayPerSeedSet.toFixed(3)} for each seed set`,
    ],
    [
      'synchrony',
      speed.synchrony === null ? '–' : speed.synchrony.toFixed(2),
      '',
      'chance that two seeds were found on the same day',
    ],
  ];
}

/** The picture's figures, day by day. */
export function CourseByDay({ course: { curve, fit } }: { course: TimeCourse }) {
  return (
    <details>
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">The curve in figures, day by day</summary>
      <table className="ledger tight">
        <TableHead columns={['day', 'germinated, %', 'likely, %', 'fitted, %']} />
        <tbody>
          {curve.points.map(({ day, germinated, lower, upper }) => (
            <tr key={day}>
              <td className="number">{day}</td>
              <td className="number">{(germinated * 100).toFixed(1)}</td>
              <td className="number">
                {(lower * 100).toFixed(1)}–{(upper * 100).toFixed(1)}
              </td>
              <td className="number">{fit.ok ? (fittedShare(fit, day) * 100).toFixed(1) : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
