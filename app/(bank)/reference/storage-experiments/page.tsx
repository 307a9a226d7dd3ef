import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { TableHead } from '@/app/_components/table-head';
import { experimentPath } from '@/app/_format/experiment-path';
import { formatCount } from '@/app/_format/figures';
import { PLAN_EXAMPLE, planQuestionSchema } from '@/lib/schemas/storage-experiment/plan-question';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findConstantsChoices } from '@/lib/server/queries/crops';
import { findStorageExperiments, type StorageExperimentSummary } from '@/lib/server/queries/storage-experiments';
import { CalculatorPage } from '../_parts/calculator-page';
import { type Address, readQuestion } from '../_parts/read-question';
import { ExperimentMethod } from './_parts/experiment-method';
import { PlanSection } from './_parts/plan-section';

export const metadata: Metadata = { title: 'Storage experiments' };

export default async function StorageExperimentsPage({ searchParams }: { searchParams: Promise<Address> }) {
  const person = await requirePerson('visitor');
  const [experiments, constants] = await Promise.all([findStorageExperiments(), findConstantsChoices()]);
  const plan = readQuestion(planQuestionSchema, await searchParams, PLAN_EXAMPLE);
  return (
    <CalculatorPage slug="storage-experiments">
      <p className="say">
        Keep seed at two or more moistures, best at three temperatures too, and count some of it from time to time. From
        the counts come the constants by which every lot of the species is forecast.
      </p>
      {mayActAs(person, 'steward') && (
        <div className="no-print">
          <Link href="/reference/storage-experiments/new" className="button main">
            Add an experiment
          </Link>
        </div>
      )}
      {experiments.length === 0 ? (
        <EmptyState>
          <p>No storage experiment has been taken in yet.</p>
        </EmptyState>
      ) : (
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked">
            <TableHead
              columns={['experiment', 'lots', 'conditions', 'counts', 'seeds', 'days']}
              words={['experiment']}
            />
            <tbody>
              {experiments.map((experiment) => (
                <ExperimentRow key={experiment.id} experiment={experiment} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      <PlanSection question={plan} choices={constants} />
      <ExperimentMethod />
    </CalculatorPage>
  );
}

function ExperimentRow({ experiment }: { experiment: StorageExperimentSummary }) {
  const { id, name, species, crop, lots, conditions, counts, seeds, longestDays } = experiment;
  return (
    <tr>
      <th scope="row" className="row-head">
        <Link
          href={experimentPath(id)}
          className="inline-flex min-h-11 items-center text-ink underline underline-offset-3"
        >
          {name}
        </Link>
        <span className="quiet block text-sm font-normal">
          {crop && `${crop.name}, `}
          <i>{species}</i>
        </span>
      </th>
      <td className="number" data-label="lots">
        {formatCount(lots)}
      </td>
      <td className="number" data-label="conditions">
        {formatCount(conditions)}
      </td>
      <td className="number" data-label="counts">
        {formatCount(counts)}
      </td>
      <td className="number" data-label="seeds">
        {formatCount(seeds)}
      </td>
      <td className="number" data-label="days">
        {formatCount(Math.round(longestDays))}
      </td>
    </tr>
  );
}
