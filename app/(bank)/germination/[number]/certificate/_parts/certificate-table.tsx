import { ScrollBox } from '@/app/_components/scroll-box';
import type { TestSummary } from '@/lib/domain/germination/result';
import { type ClassedReplicate, SEED_CLASSES } from '@/lib/domain/germination/seed-classes';

interface Props {
  replicates: (ClassedReplicate & { position: number })[];
  summary: TestSummary;
}

/** Every replicate, their sum, and whole percents that add to 100. */
export function CertificateTable({ replicates, summary }: Props) {
  return (
    <ScrollBox label="Replicates">
      <table className="ledger tight">
        <caption className="sr-only">Replicates and their sum</caption>
        <thead>
          <tr>
            <th scope="col">replicate</th>
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
              <th scope="row" className="figures px-2! py-1! print:py-0.5! text-ink!">
                {replicate.position}
              </th>
              <td className="number py-1! print:py-0.5!">{replicate.seeds}</td>
              {SEED_CLASSES.map((seedClass) => (
                <td key={seedClass} className="number py-1! print:py-0.5!">
                  {replicate[seedClass]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" className="px-2! py-1! print:py-0.5! text-ink!">
              together
            </th>
            <td className="number py-1! print:py-0.5! font-semibold">{summary.seeds}</td>
            {SEED_CLASSES.map((seedClass) => (
              <td key={seedClass} className="number py-1! print:py-0.5! font-semibold">
                {summary.totals[seedClass]}
              </td>
            ))}
          </tr>
          <tr>
            <th scope="row" className="px-2! py-1! print:py-0.5! text-ink!">
              percent
            </th>
            <td className="number py-1! print:py-0.5!">100</td>
            {SEED_CLASSES.map((seedClass) => (
              <td key={seedClass} className="number py-1! print:py-0.5!">
                {summary.roundedPercentages[seedClass]}
              </td>
            ))}
          </tr>
        </tfoot>
      </table>
    </ScrollBox>
  );
}
