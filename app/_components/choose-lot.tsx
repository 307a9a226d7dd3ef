import Link from 'next/link';
import { formatDate } from '@/app/_format/figures';
import type { LotChoice } from '@/lib/server/queries/lots-for-testing';

interface Props {
  /** what was typed and is no lot number */
  typed: string;
  choices: LotChoice[];
  /** what the choices are */
  title: string;
  /** the page that asks, and goes on with '?lot=' */
  action: string;
}

/** First step of a test or a drying run: which lot. Its number from the jar, or part of the variety's name. */
export function ChooseLot({ typed, choices, title, action }: Props) {
  const missing = typed !== '' && choices.length === 0;
  return (
    <>
      <search>
        <form action={action} className="sheet grid max-w-xl gap-3">
          <label htmlFor="lot" className="font-semibold">
            Lot
          </label>
          <p className="label" id="lot-hint">
            The number on the jar, or part of the variety's name.
          </p>
          <div className="flex gap-2">
            <input
              id="lot"
              name="lot"
              type="search"
              defaultValue={typed}
              aria-describedby="lot-hint lot-error"
              aria-invalid={missing || undefined}
              autoComplete="off"
              autoCapitalize="characters"
              required
              className="field figures text-lg!"
            />
            <button type="submit" className="button main">
              Next
            </button>
          </div>
          <p id="lot-error" className="text-sm font-semibold text-madder empty:hidden">
            {missing && `There is no lot ${typed} in the collection, nor a variety of that name.`}
          </p>
        </form>
      </search>
      {choices.length > 0 && (
        <section className="sheet max-w-xl p-0!" aria-labelledby="choices-title">
          <h2 id="choices-title" className="border-b border-rule px-5 py-3">
            {title}
          </h2>
          <ul>
            {choices.map((lot) => (
              <li key={lot.number} className="border-b border-rule last:border-0">
                <Link
                  href={`${action}?lot=${encodeURIComponent(lot.number)}`}
                  className="flex min-h-11 flex-wrap items-baseline justify-between gap-x-4 px-5 py-2.5 text-ink no-underline hover:bg-sunk"
                >
                  <span>
                    <b>{lot.accessionName}</b> <span className="quiet">{lot.cropName}</span>
                  </span>
                  <span className="figures text-sm">
                    {lot.number} <span className="quiet">harvested {formatDate(lot.harvestedOn)}</span>
                  </span>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
