import { Filter } from './filter-bar';

interface Named {
  id: string;
  name: string;
}

/** Things with names as choices of a filter. */
export const asOptions = (things: readonly Named[]) => things.map(({ id, name }) => ({ value: id, label: name }));

export function CropFilter({ crops, chosen = '' }: { crops: readonly Named[]; chosen: string | undefined }) {
  return <Filter name="crop" label="Crop" value={chosen} all="all crops" options={asOptions(crops)} />;
}

interface StoreFilterProps {
  /** what lay in the store, or when */
  label?: string;
  stores: readonly Named[];
  chosen: string;
}

export function StoreFilter({ label = 'Store', stores, chosen }: StoreFilterProps) {
  return <Filter name="store" label={label} value={chosen} all="all stores" options={asOptions(stores)} />;
}

const JUDGEMENTS = [
  { value: 'regrow', label: 'Regrow' },
  { value: 'test-first', label: 'Test first' },
  { value: 'leave', label: 'Leave' },
] as const;

export function JudgementFilter({ chosen = '' }: { chosen: string | undefined }) {
  return <Filter name="action" label="Judgement" value={chosen} all="every judgement" options={JUDGEMENTS} />;
}
