import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { HiddenField, SelectField, TextAreaField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { Sentence } from '@/app/_components/sentence';
import { formatInstant } from '@/app/_format/figures';
import { accessionPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { nextSeason } from '@/lib/domain/calendar/season';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getRegrowAccession, type RegrowAccession } from '@/lib/server/queries/regrow-accession';
import { today } from '@/lib/server/today';
import { LotSeasons } from '../_parts/lot-seasons';
import { decide } from '../actions';

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<{ decided?: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Regrow ${readParameter((await params).number)}` };
}

export default async function RegrowAccessionPage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const [{ number }, { decided }] = await Promise.all([params, searchParams]);
  const accession = await getRegrowAccession(readParameter(number));
  if (!accession) notFound();
  return (
    <>
      <PageHead
        above={
          <>
            {accession.cropName} · accession{' '}
            <Link href={accessionPath(accession.number)} className="figures text-ink-2 underline underline-offset-3">
              {accession.number}
            </Link>
          </>
        }
        title={accession.name}
      >
        <Link href="/regrow" className="button">
          The whole list
        </Link>
      </PageHead>
      {decided && <Notice kind="done">Recorded. It stays visible here and in the list.</Notice>}
      <section className="sheet grid gap-3" aria-label="Judgement">
        <p>
          <JudgementMark
            action={accession.action}
            label={accession.action === 'regrow' && accession.season ? `Regrow in ${accession.season}` : undefined}
          />
        </p>
        <p className="say">
          <Sentence text={accession.sentence} />
        </p>
        {accession.sowFromLotNumber && (
          <p>
            To sow from: <b className="figures">{accession.sowFromLotNumber}</b>, the lot closest to the original that
            can still do it.
          </p>
        )}
      </section>
      {accession.lots.map((lot) => (
        <LotSeasons key={lot.lot.id} evaluated={lot} />
      ))}
      {mayActAs(person, 'steward') && <DecisionForm accession={accession} />}
      <Decisions accession={accession} />
    </>
  );
}

const SEASONS_OFFERED = 6;

function DecisionForm({ accession }: { accession: RegrowAccession }) {
  const first = nextSeason(today(), accession.crop?.sowingMonth ?? 4);
  return (
    <section className="sheet max-w-2xl" aria-labelledby="decide">
      <h2 id="decide" className="mb-4">
        Decide
      </h2>
      <Form action={decide} className="grid gap-5 sm:grid-cols-2">
        <HiddenField name="accession" value={accession.number} />
        <SelectField
          name="action"
          label="What to do"
          defaultValue={accession.action}
          options={[
            { value: 'regrow', label: 'Regrow' },
            { value: 'test-first', label: 'Test first' },
            { value: 'leave', label: 'Leave' },
          ]}
        />
        <SelectField
          name="season"
          label="Season"
          defaultValue={accession.season ?? first}
          options={Array.from({ length: SEASONS_OFFERED }, (_, index) => String(first + index)).map((season) => ({
            value: season,
            label: season,
          }))}
        />
        {accession.lots.length > 0 && (
          <SelectField
            name="lotId"
            label="From which lot"
            optional
            empty="not said"
            defaultValue={accession.lots.find(({ lot }) => lot.number === accession.sowFromLotNumber)?.lot.id}
            options={accession.lots.map(({ lot }) => ({ value: lot.id, label: lot.number }))}
            className="sm:col-span-2"
          />
        )}
        <TextAreaField
          name="reason"
          label="Why"
          hint="One line that will still be clear in ten years."
          className="sm:col-span-2"
        />
        <div className="sm:col-span-2">
          <SubmitButton>Record the decision</SubmitButton>
        </div>
      </Form>
    </section>
  );
}

function Decisions({ accession }: { accession: RegrowAccession }) {
  if (accession.decisions.length === 0) return null;
  return (
    <section className="grid gap-3" aria-labelledby="decisions">
      <h2 id="decisions">Decisions</h2>
      <ol className="grid gap-2">
        {accession.decisions.map((decision, index) => (
          <li key={decision.id} className="sheet grid gap-1">
            <p>
              <JudgementMark
                action={decision.action}
                label={`${labelOf(decision.action)}, season ${decision.season}`}
              />{' '}
              {index > 0 && <span className="quiet">earlier</span>}
            </p>
            <p>{decision.reason}</p>
            <p className="label">
              {decision.byName}, {formatInstant(decision.decidedAt)}
              {lotNumberOf(accession, decision.lotId)}
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}

const labelOf = (action: string) => (action === 'regrow' ? 'Regrow' : action === 'leave' ? 'Leave' : 'Test first');

function lotNumberOf({ lots }: RegrowAccession, lotId: string | null): string {
  const number = lots.find(({ lot }) => lot.id === lotId)?.lot.number;
  return number ? `, from lot ${number}` : '';
}
