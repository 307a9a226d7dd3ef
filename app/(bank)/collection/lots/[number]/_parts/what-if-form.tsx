import Link from 'next/link';
import { formatTemperature } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import type { WhatIf } from '@/lib/schemas/what-if';
import type { LotForecast } from '@/lib/server/queries/lot-forecast';

interface Props {
  lotNumber: string;
  asked: WhatIf;
  errors: string[];
  stores: { id: string; name: string; targetTemperatureC: number }[];
  forecast: LotForecast;
  /** the map of storage life, asked about this seed */
  mapPath: string;
}

/** What if this seed lay elsewhere from today on, sealed: drawn beside the forecast, kept in the address. */
export function WhatIfForm({ lotNumber, asked, errors, stores, forecast, mapPath }: Props) {
  const isAsked = asked.store !== undefined || asked.temperature !== undefined || asked.moisture !== undefined;
  return (
    <details open={isAsked || errors.length > 0} className="border-t border-rule pt-2" id="what-if">
      <summary className="cursor-pointer py-2 font-semibold">What if it lay elsewhere?</summary>
      <form action={`${lotPath(lotNumber)}#what-if`} className="flex flex-wrap items-end gap-3">
        <label className="grid gap-1">
          <span className="label">Store</span>
          <select name="store" defaultValue={asked.store ?? ''} className="field w-56!">
            <option value="">as now</option>
            {stores.map((store) => (
              <option key={store.id} value={store.id}>
                {store.name}, {formatTemperature(store.targetTemperatureC)}
              </option>
            ))}
          </select>
        </label>
        <label className="grid gap-1">
          <span className="label">or temperature, °C</span>
          <input
            name="temperature"
            inputMode="decimal"
            defaultValue={asked.temperature}
            className="field figures w-28!"
            placeholder={String(forecast.present.temperatureC)}
          />
        </label>
        <label className="grid gap-1">
          <span className="label">moisture, %, sealed</span>
          <input
            name="moisture"
            inputMode="decimal"
            defaultValue={asked.moisture}
            className="field figures w-28!"
            placeholder={forecast.present.moisturePercent.toFixed(1)}
          />
        </label>
        <button type="submit" className="button">
          Draw it
        </button>
        {isAsked && (
          <Link href={lotPath(lotNumber)} className="button">
            Clear
          </Link>
        )}
        <Link href={mapPath} className="button">
          See the map
        </Link>
      </form>
      {errors.map((error) => (
        <p key={error} className="mt-2 font-semibold text-madder">
          {error}
        </p>
      ))}
      {forecast.whatIf?.ok && <Gain forecast={forecast} />}
    </details>
  );
}

function Gain({ forecast: { whatIf } }: { forecast: LotForecast }) {
  if (!whatIf?.ok) return null;
  const where = `${whatIf.storeName ? `${whatIf.storeName}, ` : ''}${formatTemperature(whatIf.temperatureC)}, ${whatIf.moisturePercent.toFixed(1)} % moisture`;
  return (
    <div className="mt-3 grid gap-1" role="status">
      <p>
        From today in <b>{where}</b>: {gainInWords(whatIf.yearsNow, whatIf.yearsThen)}
      </p>
      {whatIf.notes.map((note) => (
        <p key={note} className="quiet text-sm">
          {note}
        </p>
      ))}
    </div>
  );
}

function gainInWords(now: number | null, then: number | null): string {
  if (now !== null && now < 0.05) return 'it is at the line already; no store brings it back.';
  if (now === null && then === null) return 'beyond what can be told, here and there.';
  if (then === null) return `it stays above the line for longer than 200 years instead of ${years(now ?? 0)}.`;
  if (now === null) return `it reaches the line in ${years(then)}; here it would stay above it for longer than 200.`;
  const gained = then - now;
  if (Math.abs(gained) < 0.05) return `it reaches the line in ${years(then)}, as here.`;
  return `it reaches the line in ${years(then)} instead of ${years(now)}: ${years(Math.abs(gained))} ${gained > 0 ? 'gained' : 'lost'}.`;
}

function years(value: number): string {
  if (value < 2) return `${Math.round(value * 12)} months`;
  return `${value < 10 ? value.toFixed(1) : Math.round(value)} years`;
}
