import { HiddenField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { formatInstant } from '@/app/_format/figures';
import type { CalendarFeedRow } from '@/lib/server/queries/calendar-feeds';
import { makeCalendar, revokeCalendar } from '../actions';
import { IssuedAddress } from './issued-address';

interface Props {
  feeds: readonly CalendarFeedRow[];
  bankAddress: string | null;
}

/** Counts in one's own calendar: addresses that calendar programs read without signing in. */
export function OwnCalendars({ feeds, bankAddress }: Props) {
  return (
    <section className="no-print grid gap-3" aria-labelledby="own-calendar">
      <h2 id="own-calendar">In your own calendar</h2>
      <p className="max-w-prose">
        A calendar program on your phone or computer can show these days and keep them up to date. It reads an address
        that holds a secret: whoever has it sees which trays are counted when, and nothing else. The program must be
        able to reach this bank.
      </p>
      {feeds.length > 0 && (
        <ul className="sheet grid gap-4">
          {feeds.map((feed) => (
            <li key={feed.id} className="flex flex-wrap items-center justify-between gap-3">
              <span className="min-w-0">
                <b className="wrap-anywhere">{feed.name}</b>{' '}
                <span className="quiet">
                  made {formatInstant(feed.createdAt)},{' '}
                  {feed.lastUsedAt ? `last seen reading ${formatInstant(feed.lastUsedAt)}` : 'not read yet'}
                </span>
              </span>
              <Form action={revokeCalendar}>
                <HiddenField name="id" value={feed.id} />
                <SubmitButton quiet busy="Revoking …">
                  Revoke {feed.name}
                </SubmitButton>
              </Form>
            </li>
          ))}
        </ul>
      )}
      <div className="sheet max-w-2xl">
        <Form action={makeCalendar}>
          <TextField name="name" label="Name of the calendar" hint="Whose, and on which device: my phone." />
          <div>
            <SubmitButton busy="Making …">Make an address</SubmitButton>
          </div>
          <IssuedAddress bankAddress={bankAddress} />
        </Form>
      </div>
    </section>
  );
}
