import Link from 'next/link';
import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import { type ClimateAddress, climatePath } from '@/app/_format/climate-path';
import { formatDateRange } from '@/app/_format/date-range';
import { formatCount, formatInstant, formatMonth, formatTemperature } from '@/app/_format/figures';
import { fromEpochDay } from '@/lib/domain/calendar/calendar-date';
import type { TimeOutside } from '@/lib/domain/longevity/outside-target';
import type { Outside } from '@/lib/server/queries/months-outside';
import type { StoreClimatePage, StoreExcursion } from '@/lib/server/queries/store-climate';
import { hoursInWords } from './hours-in-words';

interface Props {
  storeId: string;
  page: StoreClimatePage;
  address: ClimateAddress;
}

/** How long the store was warmer or colder, damper or drier than it is meant to be, and the longest times of it. */
export function OutsidePart({ storeId, page, address }: Props) {
  const { whole, tolerance } = page;
  const humidityPoints = Math.round(tolerance.relativeHumidity * 100);
  return (
    <section className="grid gap-3" aria-labelledby="outside">
      <h2 id="outside">Outside its target</h2>
      <p className="say">{findings(whole)}</p>
      <p className="quiet max-w-prose">
        Outside is more than {tolerance.temperatureC} °C
        {whole.humidity && ` or ${humidityPoints} points of humidity`} from the target. Hours are counted within what
        was logged. Change the figures above to look with other eyes; what it cost does not hang on them.
      </p>
      {page.excursions.length > 0 && <Excursions storeId={storeId} page={page} address={address} />}
      {whole.temperature.hoursLogged > 0 && <Months storeId={storeId} page={page} address={address} />}
    </section>
  );
}

function findings({ temperature, humidity }: Outside): string {
  if (temperature.hoursLogged === 0) return 'Nothing was logged on these days.';
  const sentences = [
    outsideWords(temperature, 'too warm', 'too cold') ?? 'It was never too warm or too cold while it was logged.',
  ];
  if (humidity && humidity.hoursLogged > 0) {
    sentences.push(outsideWords(humidity, 'too damp', 'too dry') ?? 'The air was never too damp or too dry.');
  }
  return sentences.join(' ');
}

function outsideWords({ hoursLogged, hoursAbove, hoursBelow }: TimeOutside, above: string, below: string) {
  const parts = [
    ...(hoursAbove > 0 ? [`${above} for ${hoursInWords(hoursAbove)} (${share(hoursAbove, hoursLogged)})`] : []),
    ...(hoursBelow > 0 ? [`${below} for ${hoursInWords(hoursBelow)} (${share(hoursBelow, hoursLogged)})`] : []),
  ];
  return parts.length === 0 ? null : `It was ${parts.join(' and ')}.`;
}

function share(part: number, whole: number): string {
  const percent = (100 * part) / whole;
  if (percent > 0 && percent < 0.1) return 'under 0.1 %';
  return `${percent < 10 ? percent.toFixed(1) : Math.round(percent)} %`;
}

function Excursions({ storeId, page, address }: Props) {
  const rest = page.excursionsInAll - page.excursions.length;
  return (
    <div className="grid gap-2">
      <h3>The longest times outside</h3>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <TableHead
            columns={['Days', 'What', 'How long', 'Farthest', 'Began', 'Ended']}
            words={['Days', 'What', 'Began', 'Ended']}
          />
          <tbody>
            {page.excursions.map((excursion) => (
              <ExcursionRow
                key={excursion.fromEpochSeconds}
                excursion={excursion}
                href={climatePath(storeId, { ...address, ...datesOf(excursion) })}
              />
            ))}
          </tbody>
        </table>
      </div>
      {rest > 0 && <p className="quiet">And {formatCount(rest)} shorter ones.</p>}
    </div>
  );
}

const datesOf = ({ fromDay, toDay }: StoreExcursion) => ({ from: fromEpochDay(fromDay), to: fromEpochDay(toDay - 1) });

function ExcursionRow({ excursion, href }: { excursion: StoreExcursion; href: string }) {
  const { from, to } = datesOf(excursion);
  const hours = (excursion.toEpochSeconds - excursion.fromEpochSeconds) / 3600;
  const instant = (epochSeconds: number) => formatInstant(new Date(epochSeconds * 1000));
  return (
    <tr>
      <th scope="row" className="row-head">
        <Link href={href} scroll={false} prefetch={false}>
          {formatDateRange(from, to)}
        </Link>
      </th>
      <td data-label="what">{excursion.side === 'above' ? '▲ too warm' : '▼ too cold'}</td>
      <td className="number" data-label="how long">
        {hoursInWords(hours)}
      </td>
      <td className="number" data-label="farthest">
        {formatTemperature(excursion.peak)}
      </td>
      <td data-label="began">{instant(excursion.fromEpochSeconds)}</td>
      <td data-label="ended">{instant(excursion.toEpochSeconds)}</td>
    </tr>
  );
}

function Months({ storeId, page, address }: Props) {
  const hasHumidity = page.whole.humidity !== null;
  const columns = [
    'Month',
    'logged',
    'too warm',
    'too cold',
    'coldest',
    'warmest',
    ...(hasHumidity ? ['too damp', 'too dry'] : []),
  ];
  const hours = (part: number, whole: number) =>
    whole === 0 ? '–' : part === 0 ? '0 h' : `${hoursInWords(part)}, ${share(part, whole)}`;
  const degrees = (value: number | null) => (value === null ? '–' : formatTemperature(value));
  return (
    <details>
      <summary className="cursor-pointer py-2 font-semibold">Month by month</summary>
      <ScrollBox label="Time outside the target, month by month" className="sheet max-h-112 overflow-y-auto p-0!">
        <table className="ledger tight">
          <TableHead columns={columns} words={['Month']} />
          <tbody>
            {page.months.map(({ from, to, temperature, humidity }) => (
              <tr key={from}>
                <th scope="row" className="row-head py-1.5!">
                  <Link href={climatePath(storeId, { ...address, from, to })} scroll={false} prefetch={false}>
                    {formatMonth(from)}
                  </Link>
                </th>
                {[
                  hoursInWords(temperature.hoursLogged),
                  hours(temperature.hoursAbove, temperature.hoursLogged),
                  hours(temperature.hoursBelow, temperature.hoursLogged),
                  degrees(temperature.lowest),
                  degrees(temperature.highest),
                  ...(hasHumidity
                    ? [
                        humidity ? hours(humidity.hoursAbove, humidity.hoursLogged) : '–',
                        humidity ? hours(humidity.hoursBelow, humidity.hoursLogged) : '–',
                      ]
                    : []),
                ].map((text, column) => (
                  <td key={columns[column + 1]} className="number py-1.5!">
                    {text}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </details>
  );
}
