import Link from 'next/link';
import { formatCount, formatDate, formatGrams, formatTemperature } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { CONTAINERS } from '@/lib/domain/stock/containers';
import { PACKET_ROLES } from '@/lib/domain/stock/packet-roles';
import { currentPerson } from '@/lib/server/auth/current-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getLotPackets, type MovementRow, type PacketRow, type PlacementRow } from '@/lib/server/queries/packets';
import { TakeBackButton } from './take-back-button';

const containerLabel = (key: string) => CONTAINERS.find((container) => container.key === key)?.label ?? key;

/** The packets of a lot: where each lies and has lain, what it holds, and every line of its ledger. */
export async function PacketsAndLedger({ lotId }: { lotId: string }) {
  const [lot, person] = await Promise.all([getLotPackets(lotId), currentPerson()]);
  if (!lot) return null;
  const mayChange = person !== null && mayActAs(person, 'volunteer');
  return (
    <section className="grid gap-3" aria-labelledby="packets">
      <h2 id="packets">{lot.packets.length === 1 ? 'Packet' : 'Packets'}</h2>
      {lot.packets.length === 0 && <p className="quiet">No packet of this lot is in store.</p>}
      {lot.packets.map((packet) => (
        <Packet key={packet.id} packet={packet} lotNumber={lot.number} mayChange={mayChange} />
      ))}
    </section>
  );
}

function Packet({ packet, lotNumber, mayChange }: { packet: PacketRow; lotNumber: string; mayChange: boolean }) {
  const to = (what: string) => `${lotPath(lotNumber)}/${what}?packet=${encodeURIComponent(packet.number)}`;
  return (
    <article className="sheet grid gap-4" aria-label={`Packet ${packet.number}`}>
      <div className="flex flex-wrap items-start justify-between gap-3">
        <div className="min-w-0">
          <h3>
            <span className="figures">{packet.number}</span>: about {formatCount(packet.seeds)} seeds
            {packet.role !== 'active' && (
              <span className="quiet font-normal"> ({PACKET_ROLES.find(({ key }) => key === packet.role)?.label})</span>
            )}
          </h3>
          {packet.placement && <p>{placeInWords(packet.placement)}</p>}
        </div>
        {mayChange && (
          <div className="no-print flex flex-wrap gap-2">
            {packet.seeds > 0 && (
              <Link href={to('take')} className="button">
                Take seed out
              </Link>
            )}
            <Link href={to('move')} className="button">
              Move
            </Link>
            {packet.seeds > 1 && (
              <Link href={to('split')} className="button">
                Split
              </Link>
            )}
          </div>
        )}
      </div>
      {packet.placements.length > 1 && (
        <div>
          <h4 className="label">Where it lay before</h4>
          <ul>
            {packet.placements.slice(0, -1).map((placement) => (
              <li key={placement.id}>{placeInWords(placement)}</li>
            ))}
          </ul>
        </div>
      )}
      <Ledger packet={packet} mayChange={mayChange} />
    </article>
  );
}

function placeInWords(placement: PlacementRow): string {
  const moisture =
    placement.moisturePercent === null ? 'moisture not measured' : `${placement.moisturePercent} % moist`;
  return [
    `${placement.storeName} (${formatTemperature(placement.targetTemperatureC)})`,
    containerLabel(placement.container),
    moisture,
    `from ${formatDate(placement.from)}`,
  ].join(', ');
}

function Ledger({ packet, mayChange }: { packet: PacketRow; mayChange: boolean }) {
  if (packet.movements.length === 0) return null;
  return (
    <div className="-mx-5 -mb-5 overflow-x-auto border-t border-rule">
      <table className="ledger stacked">
        <caption className="sr-only">Ledger of packet {packet.number}, oldest entry first</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">What</th>
            <th scope="col" className="number">
              Seeds
            </th>
            <th scope="col" className="number">
              Left
            </th>
            {mayChange && (
              <th scope="col">
                <span className="sr-only">Take back</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {packet.movements.map((movement) => (
            <LedgerLine key={movement.id} movement={movement} mayChange={mayChange} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function LedgerLine({ movement, mayChange }: { movement: MovementRow; mayChange: boolean }) {
  const mayTakeBack =
    mayChange && !movement.takenBack && movement.reason !== 'correction' && movement.reason !== 'test';
  return (
    <tr>
      <td className="whitespace-nowrap" data-label="day">
        {formatDate(movement.on)}
      </td>
      <td data-label="what">
        {movement.corrects
          ? `takes back the ${movement.corrects.reason} of ${formatDate(movement.corrects.on)}`
          : movement.reason}
        {movement.takenBack && <b className="text-madder"> taken back</b>}
        {movement.note && <span className="label block">{movement.note}</span>}
        {movement.byName && <span className="label block">{movement.byName}</span>}
      </td>
      <td className="number" data-label="seeds">
        {movement.seeds > 0 ? '+' : ''}
        {formatCount(movement.seeds)}
        {movement.grams !== null && <span className="quiet block text-sm">{formatGrams(movement.grams)}</span>}
      </td>
      <td className="number" data-label="left">
        {formatCount(movement.balance)}
      </td>
      {mayChange && (
        <td className="text-right max-md:empty:hidden">
          {mayTakeBack && (
            <TakeBackButton movementId={movement.id} called={`the ${movement.reason} of ${formatDate(movement.on)}`} />
          )}
        </td>
      )}
    </tr>
  );
}
