import { ClimateMark } from '@/app/_components/climate-mark';
import { ScrollBox } from '@/app/_components/scroll-box';
import type { PacketStrip } from '@/lib/server/queries/lot-strips';
import { StripPicture } from './strip-picture';
import { StripTable } from './strip-table';
import { EVENT_SIGNS, eventWords } from './strip-words';

/** Where each packet of a lot has been since harvest, and what that did to it: what the forecast rests on. */
export function StorageHistory({ strips }: { strips: PacketStrip[] }) {
  if (strips.length === 0) return null;
  return (
    <section className="grid gap-3" aria-labelledby="storage-history">
      <h2 id="storage-history">What it has been through</h2>
      <div className="sheet grid gap-6">
        {strips.map((strip) => (
          <div key={strip.packetId} className="grid gap-2">
            <h3 className="flex flex-wrap items-baseline gap-x-3">
              <span className="figures">{strip.packetNumber}</span>
              {strip.source && (
                <span className="text-sm font-normal">
                  <ClimateMark source={strip.source} />
                </span>
              )}
            </h3>
            <ScrollBox label={`Storage history of packet ${strip.packetNumber}`}>
              <StripPicture strip={strip} />
            </ScrollBox>
            <StripTable strip={strip} />
          </div>
        ))}
        <Legend strips={strips} />
      </div>
    </section>
  );
}

function Legend({ strips }: { strips: PacketStrip[] }) {
  const happened = [...new Set(strips.flatMap(({ events }) => events.map(({ what }) => what)))];
  const isAged = strips.some(({ line }) => line.length > 0);
  return (
    <ul className="flex flex-wrap gap-x-5 gap-y-1 border-t border-rule pt-3 text-sm">
      {(['below 0 °C', '0–8 °C', '8–15 °C', 'above 15 °C'] as const).map((name, index) => (
        <li key={name} className="flex items-center gap-2">
          <span aria-hidden className={`h-3.5 w-7 border border-edge ${WARMTH_CLASSES[index]}`} />
          {name}
        </li>
      ))}
      <li className="flex items-center gap-2">
        <span aria-hidden className="strip-target h-3.5 w-7 border border-edge" />
        hatched: target, not logged
      </li>
      <li className="flex items-center gap-2">
        <span aria-hidden className="h-3.5 w-7 border-2 border-ink" />
        sealed
      </li>
      <li className="flex items-center gap-2">
        <span aria-hidden className="h-3.5 w-7 border-2 border-dashed border-ink" />
        open
      </li>
      {happened.map((what) => (
        <li key={what} className="flex items-center gap-2">
          <span aria-hidden>{EVENT_SIGNS[what]}</span>
          {eventWords(what)}
        </li>
      ))}
      {isAged && (
        <li className="flex items-center gap-2">
          <svg viewBox="0 0 28 8" className="h-2 w-7" aria-hidden="true">
            <path d="M0 7 L28 1" stroke="var(--madder)" strokeWidth="2" />
          </svg>
          ageing gathered
        </li>
      )}
    </ul>
  );
}

/** By the upper limits of `warmthOf`. */
const WARMTH_CLASSES = ['warmth-frozen', 'warmth-cold', 'warmth-cool', 'warmth-warm'] as const;
