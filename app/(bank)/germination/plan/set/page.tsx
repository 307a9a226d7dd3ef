import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { DateField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { incubatorKey } from '@/lib/domain/germination/plan/method-choices';
import { planQuery } from '@/lib/schemas/plan-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findTraysToPlan, type TrayToPlan } from '@/lib/server/queries/trays-to-set';
import { today } from '@/lib/server/today';
import { incubatorInWords } from '../_parts/incubator-group';
import { minutesOf } from '../_parts/proposal-words';
import { setTrays } from '../actions';
import { TrayFields } from './_parts/tray-fields';

export const metadata: Metadata = { title: 'Set tests' };

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function SetTestsPage({ searchParams }: Props) {
  await requirePerson('volunteer');
  const query = planQuery.parse(await searchParams);
  if (query.chosen.length === 0) redirect('/germination/plan');
  const day = today();
  const trays = byIncubator(await findTraysToPlan(query.chosen, day));
  const all = trays.flatMap(([, lots]) => lots);
  if (all.length === 0) redirect('/germination/plan');
  const back = `/germination/plan?lots=${encodeURIComponent(query.chosen.join(','))}`;
  return (
    <>
      <PageHead title="Set tests" below={inOneSentence(all)}>
        <Link href={back} className="button">
          Other lots
        </Link>
      </PageHead>
      {query.tooMany && (
        <Notice kind="caution">More lots were ticked than can be set at once: these are the first {all.length}.</Notice>
      )}
      <Form action={setTrays} className="grid gap-5">
        <div className="sheet grid gap-5 sm:grid-cols-2">
          <DateField name="setOn" label="Set on" hint="The day the seeds are laid out." max={day} defaultValue={day} />
          <TextField
            name="place"
            label="Where they stand"
            hint="As 'incubator 1, shelf 2': at the bench trays come in this order."
            optional
          />
        </div>
        {trays.map(([words, lots]) => (
          <section key={words} className="grid gap-3" aria-label={words}>
            <h2>{words}</h2>
            {lots.map((lot) => (
              <TrayFields key={lot.lotNumber} lot={lot} index={all.indexOf(lot)} />
            ))}
          </section>
        ))}
        <div>
          <SubmitButton busy="Setting …">
            Set {all.length === 1 ? 'this test' : `these ${all.length} tests`} and take the seed out
          </SubmitButton>
        </div>
      </Form>
    </>
  );
}

/** In the order of the plan: what shares an incubator together, by crop. */
function byIncubator(lots: readonly TrayToPlan[]): [string, TrayToPlan[]][] {
  const groups = new Map<string | null, TrayToPlan[]>();
  for (const lot of [...lots].sort((a, b) => a.cropName.localeCompare(b.cropName))) {
    const key = incubatorKey(lot.method ?? undefined);
    groups.set(key, [...(groups.get(key) ?? []), lot]);
  }
  return [...groups.values()].map((group) => {
    const method = group[0]?.method ?? null;
    return [incubatorInWords({ temperatures: method?.temperatures ?? null, light: method?.light ?? false }), group];
  });
}

function inOneSentence(lots: readonly TrayToPlan[]): string {
  let seeds = 0;
  let minutes = 0;
  for (const { proposal, method } of lots) {
    if (!proposal.chosen) continue;
    seeds += proposal.chosen.outcome?.expectedSeeds ?? proposal.chosen.seeds;
    minutes += minutesOf(proposal.chosen, method?.method ?? null) ?? 0;
  }
  const count = lots.length === 1 ? 'One lot' : `${lots.length} lots`;
  return `${count}: about ${formatCount(seeds)} seeds and ${hours(minutes)} of work as proposed.`;
}

const hours = (minutes: number) => (minutes < 90 ? `${minutes} minutes` : `${Math.round(minutes / 30) / 2} hours`);
