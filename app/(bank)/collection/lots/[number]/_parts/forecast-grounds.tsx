import Link from 'next/link';
import { formatPercent, formatPercentFigure, formatTemperature } from '@/app/_format/figures';
import { cropPath } from '@/app/_format/links';
import type { LotPosterior } from '@/lib/domain/longevity/lot-model';
import { posteriorSummary } from '@/lib/domain/longevity/posterior-summary';
import type { LotForecast } from '@/lib/server/queries/lot-forecast';
import type { LotPage } from '@/lib/server/queries/lot-page';

/** What the forecast rests on, and where it is weak: constants, conditions, climate, prior. */
export function ForecastGrounds({ page, forecast }: { page: LotPage; forecast: LotForecast }) {
  const { crop, evaluated } = page;
  const { tests, prior, posterior } = evaluated;
  return (
    <details className="border-t border-rule pt-2">
      <summary className="cursor-pointer py-2 font-semibold">
        What it rests on
        {crop.constantsBorrowed && (
          <span className="font-normal text-ochre"> · constants borrowed from {crop.constantsName?.toLowerCase()}</span>
        )}
      </summary>
      <ul className="grid max-w-prose list-disc gap-1 pl-5">
        <li>
          {tests.length === 0
            ? 'No test of this lot yet: the published equation and what is usual for fresh seed.'
            : `${tests.length} ${tests.length === 1 ? 'test' : 'tests'} of this lot, weighed against the published equation.`}
        </li>
        <li>
          Longevity constants of <b>{crop.constantsName}</b> ({crop.constantsMark})
          {crop.constantsBorrowed
            ? `, borrowed for ${crop.name.toLowerCase()}: ${crop.borrowedBecause}`
            : ', fitted to this species'}
          . <Link href={cropPath(crop.id)}>See them</Link>.
        </li>
        {prior && <li>{prior.reason}</li>}
        {posterior && <li>{knownOfLot(posterior)}</li>}
        <li>
          {forecast.shareRead >= 0.01
            ? `Climate logged for ${Math.round(forecast.shareRead * 100)} % of its days in store; for the rest the store's target stands in.`
            : "No climate was logged: the store's target stands in for all its days."}{' '}
          From today on it is taken to age as over the last twelve months in its present store (
          {formatTemperature(forecast.present.temperatureC)} wanted).
        </li>
        {forecast.ageing.notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
        <li>
          Ageing so far: <span className="figures">{forecast.ageing.probitsAt(forecast.todayDay).toFixed(2)}</span>{' '}
          probits by the equation. A forecast is no promise: only a test tells.
        </li>
      </ul>
    </details>
  );
}

/** What the lot's tests and the belief before them say of it together. */
function knownOfLot(posterior: LotPosterior): string {
  const { initialViability: initial, relativeRate: rate } = posteriorSummary(posterior);
  const times = (value: number) => value.toPrecision(2);
  return (
    `Taken together, it began at ${formatPercent(initial.median)} alive (${formatPercentFigure(initial.lower)} to ${formatPercentFigure(initial.upper)}) ` +
    `and ages ${times(rate.median)} times as fast as the equation says (${times(rate.lower)} to ${times(rate.upper)}, nine times in ten).`
  );
}
