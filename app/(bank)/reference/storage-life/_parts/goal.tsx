import type { ReactNode } from 'react';
import { formatTemperature } from '@/app/_format/figures';
import { coolerWay, drierWay } from '@/lib/domain/longevity/other-ways';
import { moistestThatReaches, type StorageGoal, warmestThatReaches } from '@/lib/domain/longevity/reach-goal';
import { viabilityAfter } from '@/lib/domain/longevity/storage-life';
import type { StorageCondition } from '@/lib/domain/longevity/viability-equation';
import { yearsInWords } from '@/lib/domain/longevity/years-in-words';
import type { StoredSeed } from '@/lib/server/queries/stored-seed';
import type { AskedStorage } from './asked-storage';
import { atMost, moistureOf, percentOf } from './words';

/** What reaches the goal: the moisture at this temperature, the temperature at this moisture, or the way out. */
export function Goal({ stored: { seed }, asked: { condition, goal } }: { stored: StoredSeed; asked: AskedStorage }) {
  const after = viabilityAfter(seed, condition, goal);
  return (
    <section className="grid gap-3" aria-labelledby="goal">
      <h2 id="goal">
        What keeps {percentOf(goal.wantedViability)} alive for {yearsInWords(goal.days)}
      </h2>
      <div className="sheet grid gap-3">
        {after.ok && (
          <p>
            At {formatTemperature(condition.temperatureC)} and {moistureOf(condition.moisturePercent)} there would be{' '}
            <b>{percentOf(after.viability)}</b> alive by then:{' '}
            {after.viability >= goal.wantedViability ? 'that is enough.' : 'that is not enough.'}
          </p>
        )}
        <dl className="grid gap-3 sm:grid-cols-2">
          <Way title={`In a store of ${formatTemperature(condition.temperatureC)}`}>
            <MoistureWay seed={seed} condition={condition} goal={goal} />
          </Way>
          <Way title={`At ${moistureOf(condition.moisturePercent)} moisture`}>
            <TemperatureWay seed={seed} condition={condition} goal={goal} />
          </Way>
        </dl>
      </div>
    </section>
  );
}

interface WayProps {
  seed: StoredSeed['seed'];
  condition: StorageCondition;
  goal: StorageGoal;
}

function MoistureWay({ seed, condition, goal }: WayProps) {
  const reach = moistestThatReaches(seed, condition.temperatureC, goal);
  if (reach.ok) {
    const limit = reach.isAtLimit ? ', the moistest that is reckoned with there' : '';
    return (
      <p>
        seed of <b>{moistureOf(atMost(reach.moisturePercent))} or drier</b>
        {limit}.
      </p>
    );
  }
  const way = coolerWay(seed, condition.temperatureC, goal);
  return (
    <p>
      {reach.reason}{' '}
      {way && (
        <b>
          At {formatTemperature(way.temperatureC)} {moistureOf(atMost(way.moisturePercent))} would.
        </b>
      )}
    </p>
  );
}

function TemperatureWay({ seed, condition, goal }: WayProps) {
  const reach = warmestThatReaches(seed, condition.moisturePercent, goal);
  if (reach.ok) {
    const limit = reach.isAtLimit ? ', the warmest that is reckoned with' : '';
    return (
      <p>
        a store of <b>{formatTemperature(atMost(reach.temperatureC))} or cooler</b>
        {limit}.
      </p>
    );
  }
  const way = drierWay(seed, condition.moisturePercent, goal);
  return (
    <p>
      {reach.reason}{' '}
      {way && (
        <b>
          Dried to {moistureOf(way.moisturePercent)} it would, at {formatTemperature(atMost(way.temperatureC))} or
          cooler.
        </b>
      )}
    </p>
  );
}

function Way({ title, children }: { title: string; children: ReactNode }) {
  return (
    <div>
      <dt className="label">{title}</dt>
      <dd>{children}</dd>
    </div>
  );
}
