import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { type PlanQuery, planQuery } from '@/lib/schemas/plan-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findLotsToTest } from '@/lib/server/queries/lots-for-testing';
import { findLotsToPlan, getLotsToPlan, groupName, type LotToPlan } from '@/lib/server/queries/lots-to-plan';
import { today } from '@/lib/server/today';
import { IncubatorGroup } from './_parts/incubator-group';
import { LotToChoose } from './_parts/lot-to-choose';

export const metadata: Metadata = { title: 'Plan tests' };

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function PlanTestsPage({ searchParams }: Props) {
  await requirePerson('volunteer');
  const query = planQuery.parse(await searchParams);
  const day = today();
  const [plan, found] = await Promise.all([
    findLotsToPlan({ today: day, group: query.group || undefined, page: query.page }),
    query.q === '' ? [] : findLotsToTest(query.q),
  ]);
  const listed = new Set(plan.groups.flatMap(({ lots }) => lots.map(({ lotNumber }) => lotNumber)));
  const wanted = [...query.chosen, ...found.map(({ number }) => number)].filter((number) => !listed.has(number));
  const others = await getLotsToPlan(wanted, day);
  return (
    <>
      <PageHead title="Plan tests" below={inOneSentence(plan.dueNow, plan.total - plan.dueNow)}>
        <Link href="/germination" className="button">
          Back to Germination
        </Link>
      </PageHead>
      <form action="/germination/plan/set" className="grid gap-5">
        <Find query={query} nothing={query.q !== '' && found.length === 0} />
        {others.length > 0 && (
          <OtherLots lots={others} today={day} chosen={[...query.chosen, ...(found.length === 1 ? wanted : [])]} />
        )}
        {plan.groups.map((group) => (
          <IncubatorGroup
            key={groupName(group.key)}
            group={group}
            today={day}
            chosen={query.chosen}
            allOfIt={query.group === '' ? groupAddress(groupName(group.key)) : null}
          />
        ))}
        {plan.groups.length === 0 && (
          <EmptyState>
            <p>
              {query.group === ''
                ? 'No lot needs a test in the next two months. Look one up above to test it all the same.'
                : 'Nothing is due at these temperatures.'}
            </p>
          </EmptyState>
        )}
        <Pager
          label="Pages of lots"
          page={plan.page}
          pages={plan.pages}
          href={(page) => groupAddress(query.group, page)}
          back="Due sooner"
          forth="Due later"
        />
        {(plan.groups.length > 0 || others.length > 0) && (
          <div className="no-print sticky bottom-[calc(3.5rem+env(safe-area-inset-bottom))] z-10 border-t border-rule bg-paper py-3 md:bottom-0">
            <button type="submit" className="button main">
              Go on with the ticked lots
            </button>
          </div>
        )}
      </form>
    </>
  );
}

/** The first button of the form: Enter in the box finds, and what is ticked stays ticked. */
function Find({ query, nothing }: { query: PlanQuery; nothing: boolean }) {
  return (
    <search className="no-print grid gap-2">
      <div className="flex flex-wrap items-end gap-3">
        <label className="grid grow gap-1 sm:grow-0">
          <span className="label">Another lot: its number, or part of a name</span>
          <input
            name="q"
            type="search"
            defaultValue={query.q}
            autoComplete="off"
            aria-describedby="find-error"
            className="field sm:w-72!"
          />
        </label>
        <button type="submit" formAction="/germination/plan" className="button">
          Find
        </button>
        {query.group !== '' && (
          <Link href="/germination/plan" className="button">
            All temperatures
          </Link>
        )}
      </div>
      <p id="find-error" className="text-sm font-semibold text-madder empty:hidden">
        {nothing && `There is no lot ${query.q} in the collection, nor a variety of that name.`}
      </p>
      {query.tooMany && (
        <Notice kind="caution">More lots are ticked than can be set at once: the last ones were left out.</Notice>
      )}
    </search>
  );
}

function OtherLots({ lots, today: day, chosen }: { lots: LotToPlan[]; today: string; chosen: readonly string[] }) {
  return (
    <fieldset className="sheet p-0!" aria-labelledby="other-lots">
      <h2 id="other-lots" className="px-4 py-3 sm:px-5">
        Other lots
      </h2>
      <ul>
        {lots.map((lot) => (
          <LotToChoose key={lot.lotNumber} lot={lot} today={day} checked={chosen.includes(lot.lotNumber)} />
        ))}
      </ul>
    </fieldset>
  );
}

const groupAddress = (group: string, page = 1) =>
  `/germination/plan?${new URLSearchParams({ group, ...(page > 1 ? { page: String(page) } : {}) })}`;

function inOneSentence(dueNow: number, coming: number): string {
  const now = dueNow === 0 ? 'No test is due today' : dueNow === 1 ? 'One test is due' : `${dueNow} tests are due`;
  const then = coming === 0 ? '' : `; ${coming} more ${coming === 1 ? 'falls' : 'fall'} due within two months`;
  return `${now}${then}. Lots that share an incubator stand together.`;
}
