import { formatDate, formatPercent, formatTemperature } from '@/app/_format/figures';
import { timeTicks } from '@/app/_format/time-ticks';
import { fromEpochDay } from '@/lib/domain/calendar/calendar-date';
import type { PacketStrip } from '@/lib/server/queries/lot-strips';
import { ageingFigure, EVENT_SIGNS, eventWords } from './strip-words';

/** Narrower stays have their name in the table only. */
const SHARE_FOR_A_NAME = 0.08;

/** One packet from harvest to today: what was done, where and in what it lay, how warm it was, how it aged. */
export function StripPicture({ strip }: { strip: PacketStrip }) {
  const { fromDay, toDay } = strip;
  const share = (day: number) => (day - fromDay) / Math.max(1, toDay - fromDay);
  const place = (from: number, to: number) => ({
    left: `${share(from) * 100}%`,
    width: `${(share(to) - share(from)) * 100}%`,
  });
  const ticks = timeTicks(fromDay, Math.max(fromDay + 1, toDay));
  return (
    <div role="img" aria-label={labelOf(strip)} className="min-w-xl pt-1 pr-24 text-sm">
      <div className="relative">
        <div className="relative h-6" aria-hidden>
          {byDay(strip).map(({ day, kinds }) => (
            <span
              key={day}
              className="absolute bottom-0 -translate-x-1/2 leading-none whitespace-nowrap"
              style={{ left: `${share(day) * 100}%` }}
              title={`${formatDate(fromEpochDay(day))}: ${kinds.map(eventWords).join(', ')}`}
            >
              {kinds.map((what) => EVENT_SIGNS[what]).join('')}
            </span>
          ))}
        </div>
        <div className="relative h-13" aria-hidden>
          {strip.storedDay > fromDay && (
            <div className="quiet absolute inset-y-0 overflow-hidden pt-1" style={place(fromDay, strip.storedDay)}>
              {share(strip.storedDay) > SHARE_FOR_A_NAME && 'before store'}
            </div>
          )}
          {strip.stays.map((stay) => (
            <div
              key={stay.fromDay}
              className={`absolute inset-y-0 overflow-hidden border-2 border-ink py-0.5 leading-tight ${stay.hermetic ? '' : 'border-dashed'}`}
              style={place(stay.fromDay, stay.toDay)}
            >
              {share(stay.toDay) - share(stay.fromDay) > SHARE_FOR_A_NAME && (
                <>
                  <b className="block truncate px-1.5">{stay.storeName}</b>
                  <span className="block truncate px-1.5">
                    {formatTemperature(stay.meanTemperatureC)}
                    {stay.moisturePercent !== null && `, ${stay.moisturePercent.toFixed(1)} % moist`}
                  </span>
                </>
              )}
            </div>
          ))}
        </div>
        <div className="relative mt-1 h-5 border-y border-rule" aria-hidden>
          {strip.cells.map((cell) => (
            <div
              key={cell.fromDay}
              className={`absolute inset-y-0 ${warmthOf(cell.meanTemperatureC)}`}
              // A hair wider, so that no seam shows between slices.
              style={{ ...place(cell.fromDay, cell.toDay), paddingRight: '1px', boxSizing: 'content-box' }}
            >
              {!cell.measured && <div className="strip-target absolute inset-0" />}
            </div>
          ))}
        </div>
        {strip.line.length > 0 && <Ageing strip={strip} share={share} />}
        <div className="figures relative h-6 border-t border-rule text-ink-2" aria-hidden>
          {ticks.map(({ epochSeconds, label }) => (
            <span
              key={epochSeconds}
              className="absolute -translate-x-1/2 pt-0.5 whitespace-nowrap"
              style={{ left: `${share(epochSeconds / 86_400) * 100}%` }}
            >
              {label}
            </span>
          ))}
        </div>
      </div>
    </div>
  );
}

/** The gathered ageing, from nothing at the foot to that of today at the top. */
function Ageing({ strip, share }: { strip: PacketStrip; share: (day: number) => number }) {
  const most = strip.line.at(-1)?.probits ?? 0;
  const points = strip.line.map(
    ({ day, probits }) =>
      `${(share(day) * 1000).toFixed(1)} ${(96 - (most === 0 ? 0 : (92 * probits) / most)).toFixed(1)}`,
  );
  const now = strip.stays.at(-1)?.viability ?? null;
  return (
    <div className="relative mt-1 h-16" aria-hidden>
      <svg viewBox="0 0 1000 100" preserveAspectRatio="none" className="absolute inset-0 size-full" aria-hidden="true">
        <path
          d={`M${points.join('L')}`}
          fill="none"
          stroke="var(--madder)"
          strokeWidth="2"
          vectorEffect="non-scaling-stroke"
        />
      </svg>
      <div className="absolute top-0 left-full w-24 pl-2 leading-tight whitespace-nowrap text-madder">
        <span className="figures">{ageingFigure(most)}</span> probits
        {strip.viabilityStored !== null && now !== null && (
          <span className="block">
            {formatPercent(strip.viabilityStored)} → {formatPercent(now)}
          </span>
        )}
      </div>
    </div>
  );
}

/** What was done on one day stands together. */
function byDay({ events }: PacketStrip) {
  return [...new Set(events.map(({ day }) => day))].map((day) => ({
    day,
    kinds: events.filter((event) => event.day === day).map(({ what }) => what),
  }));
}

function warmthOf(temperatureC: number): string {
  if (temperatureC < 0) return 'warmth-frozen';
  if (temperatureC < 8) return 'warmth-cold';
  return temperatureC < 15 ? 'warmth-cool' : 'warmth-warm';
}

function labelOf({ packetNumber, stays, line }: PacketStrip): string {
  const places = stays.map((stay) => `${stay.storeName} from ${formatDate(fromEpochDay(stay.fromDay))}`);
  const aged = line.length > 0 ? ` ${ageingFigure(line.at(-1)?.probits ?? 0)} probits of ageing so far.` : '';
  return `Packet ${packetNumber}: ${places.join(', ')}.${aged} The table below has the same figures.`;
}
