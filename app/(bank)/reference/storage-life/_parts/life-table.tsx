import { ScrollBox } from '@/app/_components/scroll-box';
import { formatTemperature } from '@/app/_format/figures';
import type { SeedKind } from '@/lib/domain/longevity/seed-kind';
import type { ViabilityFall } from '@/lib/domain/longevity/storage-life';
import { type MapCell, type MapZone, storageLifeCells } from '@/lib/domain/longevity/storage-life-map';
import { HORIZON_DAYS } from '@/lib/domain/longevity/time-to-threshold';
import type { StorageCondition } from '@/lib/domain/longevity/viability-equation';
import { DAYS_PER_YEAR } from './asked-storage';
import { moistureOf } from './words';

const MOISTURES = [4, 5, 6, 7, 8, 10, 12, 14];
const TEMPERATURES = [-18, 0, 5, 10, 15, 20, 25, 30];

const LETTERS: Record<MapZone, string> = {
  'drying gains nothing': 'd',
  'freezing may kill': 'f',
  'outside the fitted range': 'o',
  'too moist': 'm',
};

interface Props {
  seed: SeedKind;
  goal: ViabilityFall;
  condition: StorageCondition;
}

/** The map's figures at usual moistures and temperatures, and at those that were asked about. */
export function LifeTable({ seed, goal, condition }: Props) {
  const moistures = withAsked(MOISTURES, condition.moisturePercent);
  const temperatures = withAsked(TEMPERATURES, condition.temperatureC);
  const rows = storageLifeCells(seed, goal, { moistures, temperatures });
  const zones = new Set(rows.flat().flatMap((cell) => cell.zones));
  return (
    <details>
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">The same figures in a table</summary>
      <p className="label pb-1">Years, by moisture along the top and temperature down the side.</p>
      <ScrollBox label="Years by moisture and temperature">
        <table className="ledger tight">
          <thead>
            <tr>
              <td />
              {moistures.map((moisture) => (
                <th key={moisture} scope="col" className="number">
                  {moistureOf(moisture)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, index) => (
              <tr key={temperatures[index]}>
                <th scope="row" className="number">
                  {formatTemperature(temperatures[index] ?? 0)}
                </th>
                {row.map((cell) => (
                  <Cell key={cell.moisturePercent} cell={cell} isAsked={isAsked(cell, condition)} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      {zones.size > 0 && (
        <p className="label pt-2">{[...zones].map((zone) => `${LETTERS[zone]}: ${zone}`).join('; ')}.</p>
      )}
    </details>
  );
}

function Cell({ cell, isAsked }: { cell: MapCell; isAsked: boolean }) {
  const letters = cell.zones.map((zone) => LETTERS[zone]).join('');
  return (
    <td className="number">
      {isAsked ? <b>{figureOf(cell.days)}</b> : figureOf(cell.days)}
      {letters && <sup className="quiet">{letters}</sup>}
    </td>
  );
}

function figureOf(days: number | null): string {
  if (days === null) return '–';
  if (days > HORIZON_DAYS) return '> 200';
  const years = days / DAYS_PER_YEAR;
  if (years < 0.05) return '< 0.1';
  return years < 9.95 ? years.toFixed(1) : String(Math.round(years));
}

const withAsked = (values: readonly number[], asked: number): number[] =>
  [...new Set([...values, asked])].sort((a, b) => a - b);

const isAsked = (cell: StorageCondition, asked: StorageCondition): boolean =>
  cell.moisturePercent === asked.moisturePercent && cell.temperatureC === asked.temperatureC;
