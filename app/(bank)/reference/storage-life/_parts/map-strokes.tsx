import type { MapBounds, MapZone } from '@/lib/domain/longevity/storage-life-map';
import { hatch } from './hatches';
import { type Box, boxOf, boxOfZone, type Frame, type Point, pathOf, plotOf, toPixels } from './map-layout';

/** What the map of storage life is drawn with. */

const MOISTURE_TICKS = [2, 4, 6, 8, 10, 12, 14, 16];
const TEMPERATURE_TICKS = [-30, -20, -10, 0, 10, 20, 30, 40];

/** Paper, grid lines and the figures along both axes. */
export function Grid({ frame }: { frame: Frame }) {
  const plot = plotOf(frame);
  return (
    <g fill="var(--ink-2)">
      <rect {...rectOf(plot)} fill="var(--sheet)" />
      {MOISTURE_TICKS.map((moisturePercent) => {
        const { x } = toPixels(frame, { moisturePercent, temperatureC: 0 });
        return (
          <g key={moisturePercent}>
            <path d={`M${x} ${plot.top}V${plot.bottom}`} stroke="var(--grid)" />
            <text x={x} y={plot.bottom + frame.fontSize + 4} textAnchor="middle">
              {moisturePercent}
            </text>
          </g>
        );
      })}
      {TEMPERATURE_TICKS.map((temperatureC) => {
        const { y } = toPixels(frame, { moisturePercent: 2, temperatureC });
        return (
          <g key={temperatureC}>
            <path d={`M${plot.left} ${y}H${plot.right}`} stroke="var(--grid)" />
            <text x={plot.left - 6} y={y + frame.fontSize / 3} textAnchor="end">
              {String(temperatureC).replace('-', '−')}
            </text>
          </g>
        );
      })}
      <text x={plot.left - 6} y={plot.top + frame.fontSize / 2} textAnchor="end">
        °C
      </text>
      <text x={(plot.left + plot.right) / 2} y={frame.height - 6} textAnchor="middle">
        moisture, % of fresh weight
      </text>
    </g>
  );
}

interface ZoneAreaProps {
  zone: MapBounds & { zone: MapZone };
  frame: Frame;
  prefix: string;
}

export function ZoneArea({ zone, frame, prefix }: ZoneAreaProps) {
  const area = rectOf(boxOfZone(zone, frame));
  return (
    <>
      {/* Where there is no forecast at all the other zones do not matter. */}
      {zone.zone === 'too moist' && <rect {...area} fill="var(--sheet)" />}
      <rect {...area} fill={hatch(prefix, zone.zone)} stroke="var(--edge)" strokeWidth={0.5} />
    </>
  );
}

/** An open diamond where the store's air sets moisture too, so that what was asked can stand in it; otherwise dots along its temperature. */
export function StoreMark({ at, isLine, plot }: { at: Point; isLine: boolean; plot: Box }) {
  if (isLine) {
    return (
      <path d={`M${plot.left} ${at.y}H${plot.right}`} stroke="var(--indigo)" strokeWidth={2.5} strokeDasharray="2 5" />
    );
  }
  const diamond = `M${at.x} ${at.y - 13}l13 13l-13 13l-13 -13Z`;
  return (
    <>
      <path d={diamond} fill="none" stroke="var(--sheet)" strokeWidth={7} />
      <path d={diamond} fill="none" stroke="var(--indigo)" strokeWidth={3} />
    </>
  );
}

interface LinesProps {
  lines: Point[][];
  stroke: string;
  strokeWidth: number;
  strokeDasharray?: string;
}

export function Lines({ lines, ...style }: LinesProps) {
  return <path d={lines.map(pathOf).join('')} fill="none" strokeLinejoin="round" {...style} />;
}

interface WordsProps {
  at: Point;
  text: string;
  fontSize: number;
  fill?: string;
  upright?: boolean;
}

/** Words on a slip of paper, so that they can be read over lines and hatching. */
export function Words({ at, text, fontSize, fill = 'var(--ink)', upright = false }: WordsProps) {
  return (
    <g transform={upright ? `rotate(-90 ${at.x} ${at.y})` : undefined}>
      <rect {...rectOf(boxOf(text, at, fontSize))} fill="var(--sheet)" />
      <text x={at.x} y={at.y} textAnchor="middle" fill={fill}>
        {text}
      </text>
    </g>
  );
}

export function Outline({ box }: { box: Box }) {
  return <rect {...rectOf(box)} fill="none" stroke="var(--edge)" />;
}

const rectOf = (box: Box) => ({ x: box.left, y: box.top, width: box.right - box.left, height: box.bottom - box.top });
