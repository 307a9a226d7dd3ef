import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import { formatDateRange } from '@/app/_format/date-range';
import { formatDate, formatPercent, formatTemperature } from '@/app/_format/figures';
import { fromEpochDay } from '@/lib/domain/calendar/calendar-date';
import { CONTAINERS } from '@/lib/domain/stock/containers';
import type { NamedStay, PacketStrip } from '@/lib/server/queries/lot-strips';
import { ageingFigure, eventWords, measuredWords } from './strip-words';

const COLUMNS = ['Days', 'Store', 'Container', 'Moisture', 'Mean', 'Target', 'Climate', 'Aged by', 'Alive after'];
const WORDS = ['Days', 'Store', 'Container', 'Climate'];

/** The strip's figures, stay by stay, and what happened on which day. */
export function StripTable({ strip }: { strip: PacketStrip }) {
  const whole = strip.line.at(-1)?.probits;
  return (
    <details>
      <summary className="cursor-pointer py-2 font-semibold">
        The same figures in a table<span className="sr-only">: packet {strip.packetNumber}</span>
      </summary>
      <ScrollBox label={`Stays of packet ${strip.packetNumber}`}>
        <table className="ledger tight">
          <caption className="sr-only">Where packet {strip.packetNumber} lay, oldest stay first</caption>
          <TableHead columns={COLUMNS} words={WORDS} />
          <tbody>
            {strip.stays.map((stay, index) => (
              <StayRow
                key={stay.fromDay}
                stay={stay}
                before={index === 0 ? strip.viabilityStored : (strip.stays[index - 1]?.viability ?? null)}
              />
            ))}
          </tbody>
          {whole !== undefined && (
            <tfoot>
              <tr>
                <th scope="row" colSpan={7} className="row-head">
                  In all, as the forecast takes it
                </th>
                <td className="number">{ageingFigure(whole)}</td>
                <td />
              </tr>
            </tfoot>
          )}
        </table>
      </ScrollBox>
      {strip.events.length > 0 && (
        <ul className="mt-2">
          {strip.events.map(({ day, what, stay }) => (
            <li key={`${day} ${what}`}>
              {formatDate(fromEpochDay(day))}: {eventWords(what)}
              {stay !== null && what !== 'repacked' && `, ${strip.stays[stay]?.storeName}`}
            </li>
          ))}
        </ul>
      )}
    </details>
  );
}

function StayRow({ stay, before }: { stay: NamedStay; before: number | null }) {
  const container = CONTAINERS.find(({ key }) => key === stay.container)?.label ?? stay.container;
  const lost = before !== null && stay.viability !== null ? 100 * (before - stay.viability) : null;
  return (
    <tr>
      <th scope="row" className="row-head py-1.5!">
        {formatDateRange(fromEpochDay(stay.fromDay), fromEpochDay(stay.toDay))}
      </th>
      <td className="py-1.5!">{stay.storeName}</td>
      <td className="py-1.5!">
        {container} ({stay.hermetic ? 'sealed' : 'open'})
      </td>
      <td className="number py-1.5!">{moistureWords(stay)}</td>
      <td className="number py-1.5!">{formatTemperature(stay.meanTemperatureC)}</td>
      <td className="number py-1.5!">{formatTemperature(stay.targetTemperatureC)}</td>
      <td className="py-1.5!">{measuredWords(stay.shareRead, stay.loggedIn)}</td>
      <td className="number py-1.5!">{stay.probits === null ? '–' : ageingFigure(stay.probits)}</td>
      <td className="number py-1.5!">
        {stay.viability === null ? '–' : formatPercent(stay.viability)}
        {lost !== null && <span className="quiet block">−{lost.toFixed(1)} points</span>}
      </td>
    </tr>
  );
}

function moistureWords({ hermetic, moisturePercent, moistureMeasured }: NamedStay): string {
  if (!hermetic) return 'as the air';
  if (moisturePercent === null) return 'not measured';
  return `${moisturePercent.toFixed(1)} %${moistureMeasured ? ', measured later' : ''}`;
}
