import Link from 'next/link';
import { AnywayField } from '@/app/_components/form/anyway-field';
import { HiddenField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { benchPath } from '@/app/_format/bench-path';
import { trayCountPath } from '@/app/_format/tray-path';
import type { TrayPage } from '@/lib/server/queries/tray-page';
import { close, giveUp, reopen } from '../actions';
import { unreadyInWords } from './tray-words';

/** What to do with an open tray: count on, or close it; and what stands in the way. */
export function Closing({ tray }: { tray: TrayPage }) {
  const { unready } = tray;
  return (
    <section className="sheet no-print grid gap-4" aria-labelledby="closing-title">
      <h2 id="closing-title">{unready.length === 0 ? 'Ready to be closed' : 'Before it can be closed'}</h2>
      {unready.length > 0 && (
        <ul className="grid list-disc gap-1 pl-5">
          {unready.map((why) => (
            <li key={`${why.position} ${why.reason}${why.reason === 'disagreement' ? why.on : ''}`}>
              {unreadyInWords(why)}
            </li>
          ))}
        </ul>
      )}
      <div className="flex flex-wrap items-start gap-2">
        {/* A plain address: the bench is an app of its own, which also opens without a connection. */}
        <a href={benchPath(tray.number)} className={unready.length === 0 ? 'button' : 'button main'}>
          Count at the bench
        </a>
        <Link href={trayCountPath(tray.number)} className="button">
          Write counts down here
        </Link>
      </div>
      {unready.length === 0 && (
        <Form action={close} className="grid gap-3">
          <HiddenField name="trayId" value={tray.id} />
          <p className="max-w-prose">
            {tray.test
              ? `Closing it again corrects ${tray.test.number}, if anything changed.`
              : 'Closing writes the finished test, judges the lot anew and sets its next test.'}
          </p>
          <AnywayField name="anotherTest" label="It is another test: close this one too" />
          <div>
            <SubmitButton busy="Closing …">Close the test</SubmitButton>
          </div>
        </Form>
      )}
    </section>
  );
}

/** Folded away, since it is seldom what one came for. */
export function GiveUpForm({ trayId }: { trayId: string }) {
  return (
    <details className="no-print">
      <summary className="min-h-11 w-fit cursor-pointer py-2 font-semibold">Give it up</summary>
      <Form action={giveUp} className="sheet mt-2 grid max-w-2xl gap-4">
        <HiddenField name="trayId" value={trayId} />
        <p className="max-w-prose">
          For a tray that went mouldy, dried out or was knocked over: it says nothing of the lot. Its counts stay to be
          read, and its seed stays used.
        </p>
        <TextField name="reason" label="Why" hint="Kept with the tray." />
        <div>
          <SubmitButton quiet busy="Giving up …">
            Give up this tray
          </SubmitButton>
        </div>
      </Form>
    </details>
  );
}

export function ReopenForm({ tray, open }: { tray: TrayPage; open: boolean }) {
  return (
    <details className="no-print" open={open}>
      <summary className="min-h-11 w-fit cursor-pointer py-2 font-semibold">Open it again</summary>
      <Form action={reopen} className="sheet mt-2 grid max-w-2xl gap-4">
        <HiddenField name="trayId" value={tray.id} />
        <p className="max-w-prose">
          Then its counts can be corrected, and late ones are taken in. {tray.test?.number} goes on speaking for the lot
          until the tray is closed again; closing then writes a correction of it.
        </p>
        <TextField name="reason" label="Why" hint="Kept with the tray and the test." />
        <div>
          <SubmitButton quiet busy="Opening …">
            Open this tray again
          </SubmitButton>
        </div>
      </Form>
    </details>
  );
}
