import { formatDate, formatTemperature } from '@/app/_format/figures';
import { careDoneInWords, containerLabel, pathInWords } from '@/app/_format/packet-words';
import type { CareDone, PacketStay } from '@/lib/server/queries/packet-page';

/** Where the packet, or the seed before it was split off, has lain. */
export function StayList({ stays }: { stays: PacketStay[] }) {
  if (stays.length === 0) return null;
  return (
    <section className="grid gap-3" aria-labelledby="stays">
      <h2 id="stays">Where its seed has been</h2>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <caption className="sr-only">Stays in store, the latest first</caption>
          <thead>
            <tr>
              <th scope="col">From</th>
              <th scope="col">To</th>
              <th scope="col">Where</th>
              <th scope="col">Container</th>
              <th scope="col" className="number">
                Moisture
              </th>
            </tr>
          </thead>
          <tbody>
            {stays.map((stay) => (
              <tr key={stay.id}>
                <td className="whitespace-nowrap" data-label="from">
                  {formatDate(stay.from)}
                </td>
                <td className="whitespace-nowrap" data-label="to">
                  {stay.to ? formatDate(stay.to) : 'now'}
                </td>
                <td data-label="where">
                  {pathInWords(stay.path)}
                  {stay.path && (
                    <span className="label block">meant to be {formatTemperature(stay.path.targetTemperatureC)}</span>
                  )}
                </td>
                <td data-label="container">{containerLabel(stay.container)}</td>
                <td className="number" data-label="moisture">
                  {stay.moisturePercent === null ? 'not written' : `${stay.moisturePercent} %`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

/** What was done to its container. */
export function CareDoneList({ lines }: { lines: CareDone[] }) {
  if (lines.length === 0) return null;
  return (
    <section className="grid gap-2" aria-labelledby="care">
      <h2 id="care">What was done to it</h2>
      <ul className="sheet grid gap-2">
        {lines.map((line) => (
          <li key={line.id}>
            <span className="figures whitespace-nowrap">{formatDate(line.on)}</span>: {careDoneInWords(line)}
            <span className="label block">{[line.note, line.byName].filter(Boolean).join(' · ')}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
