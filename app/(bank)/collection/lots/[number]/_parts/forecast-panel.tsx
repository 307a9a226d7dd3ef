import { Caption, Emphasis } from '@/app/_components/caption';
import type { ForecastChartProps } from '@/app/_components/forecast-chart';
import { ForecastChartLater } from '@/app/_components/forecast-chart-later';
import { Notice } from '@/app/_components/notice';
import { fallsBelowWords } from '@/app/_format/falls-below-words';
import { formatDate, formatMonth, formatPercentFigure } from '@/app/_format/figures';
import { forecastCaption } from '@/app/_format/forecast-caption';
import { storageLifePath } from '@/app/_format/storage-life-path';
import { fromEpochDay } from '@/lib/domain/calendar/calendar-date';
import { thresholdPercent } from '@/lib/domain/regrow/threshold';
import { isWorthTesting } from '@/lib/domain/regrow/worth-testing';
import type { WhatIf } from '@/lib/schemas/what-if';
import { type ForecastEvent, type LotForecast, yearTicks } from '@/lib/server/queries/lot-forecast';
import type { LotPage } from '@/lib/server/queries/lot-page';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { FallsBelowTable } from './falls-below-table';
import { ForecastGrounds } from './forecast-grounds';
import { ForecastTable } from './forecast-table';
import { WhatIfForm } from './what-if-form';

const NOT_WORTH_TESTING = 'Another count would tell nothing new and only use up its seed.';

interface Props {
  page: LotPage;
  forecast: LotForecast;
  asked: WhatIf;
  askedErrors: string[];
}

/** A lot's forecast: the sentence first, then the picture, what if, what it rests on, and the same figures in a table. */
export async function ForecastPanel({ page, forecast, asked, askedErrors }: Props) {
  const { judgement, seedsLeft, tests } = page.evaluated;
  const { viabilityNow, chanceBelowNow, threshold, lastSafeSeason } = judgement;
  if (!viabilityNow || chanceBelowNow === null || threshold === null) return null;
  const caption = forecastCaption({
    viability: viabilityNow,
    chanceBelow: chanceBelowNow,
    threshold,
    seedsLeft,
    plantsNeeded: page.crop.plantsNeeded,
    cropName: page.crop.name,
    nextSeason: judgement.nextSeason,
    rescue: judgement.rescue,
    lastSafeSeason: typeof lastSafeSeason === 'number' ? lastSafeSeason : null,
    tests: tests.length,
  });
  const stores = await findStoreChoices();
  const { whatIf } = forecast;
  return (
    <section className="sheet grid gap-4" aria-label="Forecast">
      <Caption text={caption} />
      <p className="-mt-2 max-w-prose">
        <Emphasis text={fallsBelowWords(forecast.fallsBelow)} />
      </p>
      <p className="quiet -mt-2">
        {isWorthTesting({ seedsLeft, everTested: tests.length > 0, chanceBelow: chanceBelowNow })
          ? `Next test due ${formatDate(judgement.testDue.dueOn)}. ${judgement.testDue.sentence}`
          : NOT_WORTH_TESTING}
      </p>
      <ForecastChartLater {...chartOf(page, forecast)} />
      <Legend
        hasAlternative={whatIf?.ok === true}
        events={forecast.events}
        thresholdFigure={thresholdPercent(threshold)}
      />
      <WhatIfForm
        lotNumber={page.number}
        asked={asked}
        errors={askedErrors}
        stores={stores}
        forecast={forecast}
        mapPath={mapPathOf(page, forecast, asked)}
      />
      {whatIf && !whatIf.ok && <Notice kind="caution">{whatIf.reason}</Notice>}
      <ForecastGrounds page={page} forecast={forecast} />
      <FallsBelowTable fallsBelow={forecast.fallsBelow} />
      <ForecastTable forecast={forecast} />
    </section>
  );
}

/** The map of storage life for this seed as it is now, where it lies or where it was asked about. */
function mapPathOf(page: LotPage, forecast: LotForecast, asked: WhatIf): string {
  const store = asked.store ?? page.evaluated.periods.at(-1)?.storeId;
  const now = page.evaluated.judgement.viabilityNow?.median ?? 0;
  // By more than a tenth of a percent, to which the link is rounded.
  const isAbove = now - forecast.threshold > 0.001 && now < 0.9995;
  const other = forecast.whatIf?.ok ? forecast.whatIf : forecast.present;
  return storageLifePath({
    crop: page.crop.id,
    store,
    moisture: other.moisturePercent,
    temperature: other.temperatureC,
    // Below the line already there is no fall to ask about: the page's own example stands in.
    initial: isAbove ? now * 100 : undefined,
    wanted: isAbove ? forecast.threshold * 100 : undefined,
  });
}

function chartOf(page: LotPage, forecast: LotForecast) {
  const alternative = forecast.whatIf?.ok ? forecast.whatIf.curve : [];
  const from = forecast.curve[0]?.day ?? 0;
  const to = forecast.curve.at(-1)?.day ?? 0;
  const mainRows = forecast.curve.map((point) => ({
    day: point.day,
    median: percent(point.median),
    band: [percent(point.lower), percent(point.upper)] as [number, number],
  }));
  const otherRows = alternative.map((point) => ({
    day: point.day,
    alternative: percent(point.median),
    alternativeBand: [percent(point.lower), percent(point.upper)] as [number, number],
  }));
  return {
    curve: mergeByDay(mainRows, otherRows),
    tests: forecast.tests.map((test) => ({
      day: test.day,
      percent: percent(test.proportion),
      error: [percent(test.proportion - test.lower), percent(test.upper - test.proportion)] as [number, number],
    })),
    threshold: percent(forecast.threshold),
    thresholdLabel: `the line, ${thresholdPercent(forecast.threshold)}`,
    todayDay: forecast.todayDay,
    testDueDay: forecast.testDueDay !== null && forecast.testDueDay > forecast.todayDay ? forecast.testDueDay : null,
    lastSafe: forecast.lastSafeSeason
      ? { day: forecast.lastSafeSeason.day, label: `last safe season ${forecast.lastSafeSeason.season}` }
      : null,
    events: forecast.events.map((event) => ({ fromDay: event.fromDay, toDay: event.toDay, label: eventLabel(event) })),
    yearTicks: yearTicks(from, to),
    label: `Viability of lot ${page.number} from ${fromEpochDay(from).slice(0, 4)} to ${fromEpochDay(to).slice(0, 4)}: ${forecastInWords(forecast)}. The table below has the same figures.`,
  };
}

function forecastInWords({ curve, todayDay }: LotForecast): string {
  const now = curve.find((point) => point.day === todayDay);
  const end = curve.at(-1);
  if (!now || !end) return 'no figures';
  return `${formatPercentFigure(now.median)} percent today, ${formatPercentFigure(end.median)} percent at the end`;
}

type CurveRow = ForecastChartProps['curve'][number];

/** Both curves in one list by day, so that one chart can draw them; a day may have only one of the two. */
function mergeByDay(...lists: CurveRow[][]): CurveRow[] {
  const rows = new Map<number, CurveRow>();
  for (const row of lists.flat()) rows.set(row.day, { ...rows.get(row.day), ...row });
  return [...rows.values()].sort((a, b) => a.day - b.day);
}

function eventLabel({ storeName, fromDay }: ForecastEvent): string {
  return `${storeName} warm, ${formatMonth(fromEpochDay(fromDay))}`;
}

function Legend({
  hasAlternative,
  events,
  thresholdFigure,
}: {
  hasAlternative: boolean;
  events: ForecastEvent[];
  thresholdFigure: number;
}) {
  return (
    <div className="-mt-2 grid gap-1 text-sm text-ink-2">
      <p>
        <b className="text-indigo">Curve and band</b>: most likely, and nine times in ten.{' '}
        <b className="text-madder">Dashes</b>: the line, {thresholdFigure} %. <b className="text-ink">Circles</b>: tests
        with what they leave open.{' '}
        {hasAlternative && (
          <>
            <b className="text-leaf">Dots</b>: what if.
          </>
        )}
      </p>
      {events.map((event) => (
        <p key={event.fromDay}>
          <b className="text-ochre">{eventLabel(event)}</b>: for {event.toDay - event.fromDay} days the seed aged{' '}
          {event.timesFaster.toFixed(0)} times as fast as it should, as much as in {Math.round(event.targetDays / 30)}{' '}
          normal months.
        </p>
      ))}
    </div>
  );
}

const percent = (proportion: number) => Math.round(proportion * 1000) / 10;
