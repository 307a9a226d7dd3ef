import type { CropDetail } from '@/lib/server/queries/crops';
import { Source } from './source';

/** How seed of the crop is tested, as each source prescribes. */
export function GerminationMethods({ methods }: { methods: CropDetail['germinationMethods'] }) {
  if (methods.length === 0) return null;
  return (
    <section className="grid gap-3" aria-labelledby="germination">
      <h2 id="germination">How to test germination</h2>
      <div className="grid gap-3 lg:grid-cols-2">
        {methods.map((method) => (
          <div key={method.id} className="sheet grid content-start gap-3">
            <dl className="grid grid-cols-2 gap-x-6 gap-y-3">
              <Line name="Seed lies" value={method.substrata} />
              <Line name="Temperatures, °C" value={method.temperatures} figures />
              <Line
                name="Count on day"
                value={[method.firstCountDays, method.finalCountDays].filter((day) => day !== null).join(' and ')}
                figures
              />
              <Line name="Light" value={method.light ? 'needed' : 'not needed'} />
              <Line name="Before the test" value={method.preTreatment ?? 'nothing'} />
              <Line name="Hard seed" value={method.hardSeedOccurs ? 'occurs: count it apart' : 'does not occur'} />
            </dl>
            <Source mark={method.mark} source={method.source} />
          </div>
        ))}
      </div>
    </section>
  );
}

function Line({ name, value, figures }: { name: string; value: string; figures?: boolean }) {
  return (
    <div className="min-w-0">
      <dt className="label">{name}</dt>
      <dd className={figures ? 'figures' : undefined}>{value}</dd>
    </div>
  );
}
