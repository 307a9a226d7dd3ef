import { type ClassedReplicate, SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import { Dish } from './dish';

/** Every replicate as it was counted: the dishes to look at, and the same figures in a table. */
export function ReplicatesShown({ replicates }: { replicates: (ClassedReplicate & { position: number })[] }) {
  return (
    <div className="grid gap-4">
      <ul className="grid grid-cols-2 gap-4 sm:grid-cols-4">
        {replicates.map((replicate) => (
          <li key={replicate.position} className="grid justify-items-center gap-1">
            <Dish
              seeds={replicate.seeds}
              counts={replicate}
              label={`Replicate ${replicate.position}: ${replicate.normal} normal of ${replicate.seeds} seeds`}
              className="w-full max-w-44"
            />
            <span className="text-sm">
              <span className="quiet">{replicate.position}:</span>{' '}
              <span className="figures">
                {replicate.normal} of {replicate.seeds}
              </span>
            </span>
          </li>
        ))}
      </ul>
      <details>
        <summary className="w-fit cursor-pointer py-2.5 font-semibold">Counts in a table</summary>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls sideways must be reachable by keyboard */}
        <section aria-label="Counts of each replicate" tabIndex={0} className="overflow-x-auto">
          <table className="ledger">
            <thead>
              <tr>
                <th scope="col">Replicate</th>
                <th scope="col" className="number">
                  seeds
                </th>
                {SEED_CLASSES.map((seedClass) => (
                  <th scope="col" key={seedClass} className="number">
                    {seedClass}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {replicates.map((replicate) => (
                <tr key={replicate.position}>
                  <td className="figures py-2!">{replicate.position}</td>
                  <td className="number py-2!">{replicate.seeds}</td>
                  {SEED_CLASSES.map((seedClass) => (
                    <td key={seedClass} className="number py-2!">
                      {replicate[seedClass]}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      </details>
    </div>
  );
}
