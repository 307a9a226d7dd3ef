import { targetInWords } from '@/app/_format/climate';
import { formatTemperature } from '@/app/_format/figures';
import { lifeContours } from '@/lib/domain/longevity/life-contours';
import { storageLife } from '@/lib/domain/longevity/storage-life';
import { type MapZone, mapZones } from '@/lib/domain/longevity/storage-life-map';
import { yearsInWords } from '@/lib/domain/longevity/years-in-words';
import type { StoredSeed } from '@/lib/server/queries/stored-seed';
import { type AskedStorage, DAYS_PER_YEAR } from './asked-storage';
import { Hatches, hatch } from './hatches';
import { LifeMap } from './life-map';
import { LifeTable } from './life-table';
import { MAP_BOUNDS, NARROW, WIDE } from './map-layout';
import { moistureInStore, type StoreTarget } from './store-air';
import { conditionInWords, moistureOf, percentOf } from './words';

/** Years that have a line on every map. */
const LINES = [1, 2, 5, 10, 20, 50, 100, 200];

interface Props {
  stored: StoredSeed;
  asked: AskedStorage;
  store: StoreTarget | null;
}

/** Storage life over moisture and temperature: what it shows in a sentence, the map, what its signs mean, and its table. */
export function MapAndTable({ stored: { seed }, asked: { condition, goal }, store }: Props) {
  const years = Math.round((goal.days / DAYS_PER_YEAR) * 10) / 10;
  const [goalLine = { years, lines: [] }] = lifeContours(seed, goal, MAP_BOUNDS, [years]);
  const zones = mapZones(seed, MAP_BOUNDS);
  const moistureInAir = store && moistureInStore(store, seed.oilFraction);
  const life = storageLife(seed, condition, goal);
  const from = `${percentOf(goal.initialViability)} to ${percentOf(goal.wantedViability)}`;
  const drawing = {
    contours: lifeContours(
      seed,
      goal,
      MAP_BOUNDS,
      LINES.filter((one) => one !== years),
    ),
    goal: goalLine,
    zones,
    asked: {
      at: condition,
      words: `asked: ${moistureOf(condition.moisturePercent)}, ${formatTemperature(condition.temperatureC)}`,
    },
    store: store && { temperatureC: store.targetTemperatureC, moisturePercent: moistureInAir, words: store.name },
    label: `Map of the years from ${from} over moisture, 2 to 16 percent, and temperature, −30 to 45 °C: longest where seed is dry and cold, at the lower left. At ${conditionInWords(condition)} it is ${life.ok ? yearsInWords(life.days) : 'outside the equation'}. The table below has the same figures.`,
  };
  return (
    <section className="sheet grid gap-3" aria-labelledby="map">
      <h2 id="map">Years from {from}</h2>
      <p className="max-w-prose">
        Each line joins moistures and temperatures at which seed keeps as long. To the left, drier; downwards, cooler.
      </p>
      <div className="hidden md:block">
        <LifeMap {...drawing} frame={WIDE} prefix="wide" />
      </div>
      <div className="mx-auto w-full max-w-md md:hidden">
        <LifeMap {...drawing} frame={NARROW} prefix="narrow" />
      </div>
      <Signs zones={new Set(zones.map(({ zone }) => zone))} store={store} moistureInAir={moistureInAir} />
      <LifeTable seed={seed} goal={goal} condition={condition} />
    </section>
  );
}

const ZONES_IN_WORDS: Record<MapZone, string> = {
  'drying gains nothing': 'below the low-moisture limit drying further gains nothing',
  'freezing may kill': 'above 14 % moisture freezing may kill the seed',
  'outside the fitted range': 'outside the range in which the constants were fitted: a guess',
  'too moist': 'above 15 % moisture the equation does not hold: no forecast',
};

function Signs({
  zones,
  store,
  moistureInAir,
}: {
  zones: ReadonlySet<MapZone>;
  store: StoreTarget | null;
  moistureInAir: number | null;
}) {
  return (
    <ul className="grid gap-x-6 gap-y-1 text-sm text-ink-2 sm:grid-cols-2">
      <li>
        <b className="text-madder">Circle</b>: what was asked. <b className="text-leaf">Dashes</b>: the years asked for.
      </li>
      {store && (
        <li>
          <b className="text-indigo">{moistureInAir === null ? 'Dots' : 'Diamond'}</b>: {store.name},{' '}
          {targetInWords(store)}
          {moistureInAir === null
            ? '; its humidity is not known, sealed seed keeps its own moisture'
            : `; open seed comes to rest there at ${moistureOf(moistureInAir)}, sealed seed keeps its own moisture`}
          .
        </li>
      )}
      {[...zones].map((zone) => (
        <li key={zone} className="flex items-start gap-2">
          <svg aria-hidden="true" width="28" height="18" className="mt-0.5 shrink-0">
            <Hatches prefix={`sign-${zone.replaceAll(' ', '-')}`} />
            <rect width="28" height="18" fill={hatch(`sign-${zone.replaceAll(' ', '-')}`, zone)} stroke="var(--edge)" />
          </svg>
          {ZONES_IN_WORDS[zone]}
        </li>
      ))}
    </ul>
  );
}
