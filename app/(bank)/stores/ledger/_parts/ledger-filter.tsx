import Link from 'next/link';
import { Filter } from '@/app/_components/list/filter-bar';
import { MOVEMENT_REASON_LABELS, MOVEMENT_REASONS } from '@/lib/domain/stock/movement-reasons';
import type { LedgerQuery } from '@/lib/schemas/ledger-query';

interface Choice {
  id: string;
  name: string;
}

interface Props {
  path: string;
  query: LedgerQuery;
  narrowed: boolean;
  people: Choice[];
  crops: Choice[];
  stores: Choice[];
}

const REASONS = MOVEMENT_REASONS.map((reason) => ({ value: reason, label: MOVEMENT_REASON_LABELS[reason] }));
const asOptions = (choices: Choice[]) => choices.map(({ id, name }) => ({ value: id, label: name }));

/** Which lines of the ledger: a plain form whose answer is an address, so it works without scripts. */
export function LedgerFilter({ path, query, narrowed, people, crops, stores }: Props) {
  return (
    <search>
      <form
        action={path}
        // The boxes hold what the address says, also when a link changed it.
        key={JSON.stringify(query)}
        className="no-print grid grid-cols-2 items-end gap-3 sm:flex sm:flex-wrap"
      >
        <label className="col-span-2 grid gap-1">
          <span className="label">Find by number, name or crop</span>
          <input name="q" type="search" defaultValue={query.q} autoComplete="off" className="field sm:w-56!" />
        </label>
        <Filter name="reason" label="Reason" value={query.reason} all="every reason" options={REASONS} />
        <Filter
          name="store"
          label="Store on that day"
          value={query.store}
          all="all stores"
          options={asOptions(stores)}
        />
        <Filter name="crop" label="Crop" value={query.crop} all="all crops" options={asOptions(crops)} />
        <Filter name="person" label="Written by" value={query.person} all="everybody" options={asOptions(people)} />
        <Day name="from" label="From" value={query.from} />
        <Day name="to" label="To" value={query.to} />
        <div className="flex gap-2 max-sm:col-span-2">
          <button type="submit" className="button">
            Show
          </button>
          {narrowed && (
            <Link href={path} className="button border-transparent! bg-transparent! font-normal! underline">
              Show all
            </Link>
          )}
        </div>
      </form>
    </search>
  );
}

function Day({ name, label, value }: { name: string; label: string; value: string }) {
  return (
    <label className="grid min-w-0 gap-1">
      <span className="label">{label}</span>
      <input name={name} type="date" defaultValue={value} className="field figures sm:w-auto!" />
    </label>
  );
}
