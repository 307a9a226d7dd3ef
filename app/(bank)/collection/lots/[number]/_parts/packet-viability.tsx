import { Viability } from '@/app/_components/viability';
import { formatPercent } from '@/app/_format/figures';
import type { PacketForecast } from '@/lib/server/queries/packet-forecast';

/** How alive a packet's seed is now, and what will be left of it in ten years where it lies: what a freezer saves. */
export function PacketViability({ forecast }: { forecast: PacketForecast | undefined }) {
  if (!forecast?.ok) return <Viability median={null} lower={null} upper={null} />;
  return (
    <>
      <Viability median={forecast.median} lower={forecast.lower} upper={forecast.upper} />
      <span className="quiet block font-sans text-sm whitespace-normal">
        in ten years here {formatPercent(forecast.inTenYears)}
      </span>
    </>
  );
}
