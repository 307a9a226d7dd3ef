import { TableHead } from '@/app/_components/table-head';
import { formatCount } from '@/app/_format/figures';
import { SAFE_FREEZING_MOISTURE_PERCENT } from '@/lib/domain/longevity/equation-limits';
import { COLDEST_STORE_C } from '@/lib/domain/longevity/reach-goal';
import { storageLife } from '@/lib/domain/longevity/storage-life';
import { HORIZON_DAYS } from '@/lib/domain/longevity/time-to-threshold';
import type { StorageCondition } from '@/lib/domain/longevity/viability-equation';
import { type LifeGained, lifeGained } from '@/lib/domain/longevity/years-gained';
import { yearsInWords } from '@/lib/domain/longevity/years-in-words';
import type { StoredSeed } from '@/lib/server/queries/stored-seed';
import type { AskedStorage } from './asked-storage';
import { conditionInWords } from './words';

const STEPS: { name: string; dry: number; cool: number }[] = [
  { name: '1 % drier', dry: 1, cool: 0 },
  { name: '2 % drier', dry: 2, cool: 0 },
  { name: '5 °C cooler', dry: 0, cool: 5 },
  { name: '10 °C cooler', dry: 0, cool: 10 },
  { name: '1 % drier and 5 °C cooler', dry: 1, cool: 5 },
];

/** Years gained by drying or cooling a step. */
export function Gains({ stored: { seed }, asked: { condition, goal } }: { stored: StoredSeed; asked: AskedStorage }) {
  if (!storageLife(seed, condition, goal).ok) return null;
  return (
    <section className="grid gap-3" aria-labelledby="gains">
      <h2 id="gains">What drying or cooling gains</h2>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <TableHead columns={['step', 'keeps', 'gained', 'times as long']} words={['step']} />
          <tbody>
            {STEPS.map(({ name, dry, cool }) => {
              const to = {
                moisturePercent: condition.moisturePercent - dry,
                temperatureC: condition.temperatureC - cool,
              };
              if (to.moisturePercent <= 0 || to.temperatureC < COLDEST_STORE_C) return null;
              return <Row key={name} name={name} to={to} gain={lifeGained(seed, condition, to, goal)} />;
            })}
          </tbody>
        </table>
      </div>
      <p className="quiet max-w-prose text-sm">
        How many times as long does not hang on the percentages asked for, only on moisture and temperature.
      </p>
    </section>
  );
}

function Row({ name, to, gain }: { name: string; to: StorageCondition; gain: LifeGained }) {
  if (!gain.ok) return null;
  const isBeyond = gain.from.days > HORIZON_DAYS || gain.to.days > HORIZON_DAYS;
  const isUnsafe = to.temperatureC < 0 && to.moisturePercent > SAFE_FREEZING_MOISTURE_PERCENT;
  return (
    <tr>
      <th scope="row" className="row-head">
        {name}
        <span className="label block font-normal">{conditionInWords(to)}</span>
        {gain.to.heldAtLowLimit && (
          <span className="label block font-normal">below the low-moisture limit: drying further gains nothing</span>
        )}
        {isUnsafe && <span className="label block font-normal">freezing may kill seed so moist</span>}
      </th>
      <td className="number" data-label="keeps">
        {yearsInWords(gain.to.days)}
      </td>
      <td className="number" data-label="gained">
        {gainedInWords(gain.daysGained, isBeyond)}
      </td>
      <td className="number" data-label="times as long">
        {gain.timesAsLong < 10 ? gain.timesAsLong.toFixed(1) : formatCount(gain.timesAsLong)} ×
      </td>
    </tr>
  );
}

function gainedInWords(days: number, isBeyond: boolean): string {
  if (isBeyond) return 'cannot be told';
  if (Math.round(days) === 0) return 'nothing';
  return days > 0 ? yearsInWords(days) : `${yearsInWords(-days)} lost`;
}
