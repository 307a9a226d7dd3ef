import type { MapZone } from '@/lib/domain/longevity/storage-life-map';

/** Each zone has its own direction of lines, so that it is told without colour. */
const HATCHES: Record<MapZone, { step: number; turn: number; stroke: string; crossed?: boolean }> = {
  'drying gains nothing': { step: 6, turn: 0, stroke: 'var(--ochre)' },
  'freezing may kill': { step: 6, turn: -45, stroke: 'var(--indigo)' },
  'outside the fitted range': { step: 12, turn: 45, stroke: 'var(--edge)' },
  'too moist': { step: 6, turn: 45, stroke: 'var(--madder)', crossed: true },
};

const idOf = (prefix: string, zone: MapZone) => `${prefix}-${zone.replaceAll(' ', '-')}`;

/** The fill of a zone, where `Hatches` with the same prefix stands in the same drawing. */
export const hatch = (prefix: string, zone: MapZone): string => `url(#${idOf(prefix, zone)})`;

/** The patterns themselves; ids are unique in a page, so every drawing brings a prefix of its own. */
export function Hatches({ prefix }: { prefix: string }) {
  return (
    <defs>
      {(Object.keys(HATCHES) as MapZone[]).map((zone) => {
        const { step, turn, stroke, crossed } = HATCHES[zone];
        return (
          <pattern
            key={zone}
            id={idOf(prefix, zone)}
            width={step}
            height={step}
            patternUnits="userSpaceOnUse"
            patternTransform={`rotate(${turn})`}
          >
            <path d={`M0 ${step / 2}H${step}`} stroke={stroke} strokeWidth={1} />
            {crossed && <path d={`M${step / 2} 0V${step}`} stroke={stroke} strokeWidth={1} />}
          </pattern>
        );
      })}
    </defs>
  );
}
