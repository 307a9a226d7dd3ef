import { formatCount } from '@/app/_format/figures';
import type { ImportProblem } from '@/lib/schemas/import/import-context';

const SHOWN = 200;

/** What keeps the file from being imported, by line and column, in the order of the file. */
export function ProblemTable({ problems }: { problems: ImportProblem[] }) {
  return (
    <section className="grid gap-2">
      <h2>{problems.length === 1 ? 'One problem' : `${formatCount(problems.length)} problems`}</h2>
      <p className="quiet">
        Mend them in the spreadsheet and choose the file again, or match the columns differently below.
      </p>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <thead>
            <tr>
              <th scope="col" className="number">
                line
              </th>
              <th scope="col">column</th>
              <th scope="col">it says</th>
              <th scope="col">what to do</th>
            </tr>
          </thead>
          <tbody>
            {problems.slice(0, SHOWN).map((problem) => (
              <tr key={`${problem.line} ${problem.field} ${problem.message}`}>
                <td className="number" data-label="line">
                  {problem.line ?? 'whole file'}
                </td>
                <td data-label="column">{problem.column ?? 'whole line'}</td>
                <td className="figures max-w-48 break-words" data-label="it says">
                  {problem.value || '(empty)'}
                </td>
                <td>{problem.message}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {problems.length > SHOWN && <p className="quiet">The first {SHOWN} are shown.</p>}
    </section>
  );
}
