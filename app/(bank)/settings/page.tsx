import type { Metadata } from 'next';
import { cookies } from 'next/headers';
import Link from 'next/link';
import { HiddenField, NumberField, SelectField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { MONTH_NAMES } from '@/app/_format/figures';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getBank } from '@/lib/server/queries/bank';
import { chooseTheme, saveBank } from './actions';

export const metadata: Metadata = { title: 'Settings' };

interface Props {
  searchParams: Promise<{ saved?: string }>;
}

export default async function SettingsPage({ searchParams }: Props) {
  const isSteward = mayActAs(await requirePerson('visitor'), 'steward');
  const [{ saved }, bank, jar] = await Promise.all([searchParams, getBank(), cookies()]);
  const theme = jar.get('theme')?.value ?? 'device';
  return (
    <>
      <PageHead title="Settings" below="How this bank decides. A crop may have its own figures on its page.">
        <Link href="/phone" className="button">
          On your phone
        </Link>
        {isSteward && (
          <>
            <Link href="/import" className="button">
              Import a spreadsheet
            </Link>
            <Link href="/settings/people" className="button">
              People
            </Link>
          </>
        )}
      </PageHead>
      {saved && <Notice kind="done">Saved. Every lot was judged anew.</Notice>}
      {isSteward && <BankForm bank={bank} />}
      <section className="sheet max-w-3xl">
        <h2>Light or dark</h2>
        <form action={chooseTheme} className="mt-3 flex flex-wrap gap-2">
          {[
            ['device', 'As this device'],
            ['light', 'Light'],
            ['dark', 'Dark'],
          ].map(([value, label]) => (
            <button
              key={value}
              type="submit"
              name="theme"
              value={value}
              className="button"
              aria-pressed={theme === value}
            >
              {label}
              {theme === value && <span aria-hidden>✓</span>}
            </button>
          ))}
        </form>
      </section>
    </>
  );
}

function BankForm({ bank }: { bank: Awaited<ReturnType<typeof getBank>> }) {
  return (
    <section className="sheet max-w-3xl">
      <Form action={saveBank} className="grid gap-5 sm:grid-cols-2">
        <HiddenField name="version" value={bank.version} />
        <TextField name="name" label="Name of the bank" defaultValue={bank.name} className="sm:col-span-2" />
        <SelectField
          name="thresholdKind"
          label="The line"
          hint="A lot that falls below it should be regrown."
          defaultValue={bank.thresholdKind}
          options={[
            { value: 'fraction-of-initial', label: 'a share of the lot’s own initial viability' },
            { value: 'absolute', label: 'one viability for every lot' },
          ]}
        />
        <NumberField
          name="thresholdValue"
          label="Where the line is"
          hint="85 % of initial viability is the usual standard for seed banks."
          unit="%"
          defaultValue={toPercent(bank.thresholdValue)}
        />
        <SelectField
          name="sowingMonth"
          label="Month of sowing"
          hint="Seasons are counted by it."
          defaultValue={bank.sowingMonth}
          options={MONTH_NAMES.map((label, index) => ({ value: String(index + 1), label }))}
        />
        <NumberField
          name="emergence"
          label="Emergence"
          hint="Of 100 viable seeds sown, how many give a plant in your beds."
          unit="%"
          defaultValue={toPercent(bank.emergence)}
        />
        <NumberField
          name="assurance"
          label="Assurance"
          hint="How sure a sowing should be of raising the plants needed."
          unit="%"
          defaultValue={toPercent(bank.assurance)}
        />
        <TextField
          name="address"
          label="Where phones reach this bank"
          hint="Stands in the codes of labels, so that a phone’s camera opens the packet: https://seedroom.example:4300. Without it codes hold the packet’s number, which Scan reads. Labels already printed stay good either way."
          optional
          defaultValue={bank.address}
          className="sm:col-span-2"
        />
        <div className="sm:col-span-2">
          <SubmitButton>Save settings</SubmitButton>
        </div>
      </Form>
    </section>
  );
}

/** Without the noise of binary fractions: 0.07 is 7, not 7.000000000000001. */
const toPercent = (proportion: number) => Number((proportion * 100).toFixed(4));
