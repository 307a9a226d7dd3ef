import { Filter, FilterBar } from '@/app/_components/list/filter-bar';
import { asOptions, CropFilter, StoreFilter } from '@/app/_components/list/usual-filters';
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

/** Which lines of the ledger: a plain form whose answer is an address, so it works without scripts. */
export function LedgerFilter({ path, query, narrowed, people, crops, stores }: Props) {
  return (
    <FilterBar path={path} looksThrough="number, name or crop" query={query} narrowed={narrowed} boxClass="sm:w-56!">
      <Filter name="reason" label="Reason" value={query.reason} all="every reason" options={REASONS} />
      <StoreFilter label="Store on that day" stores={stores} chosen={query.store} />
      <CropFilter crops={crops} chosen={query.crop} />
      <Filter name="person" label="Written by" value={query.person} all="everybody" options={asOptions(people)} />
      <Day name="from" label="From" value={query.from} />
      <Day name="to" label="To" value={query.to} />
    </FilterBar>
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
