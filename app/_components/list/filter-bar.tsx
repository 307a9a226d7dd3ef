import clsx from 'clsx';
import Link from 'next/link';
import type { ReactNode } from 'react';

interface Props {
  path: string;
  /** what the search box looks through: 'name, number or crop' */
  looksThrough: string;
  query: { q: string; sort?: string };
  /** on a phone, where the column heads are not shown: ways to order the list, if there are any */
  sorts?: readonly (readonly [string, string])[];
  /** something is searched or filtered, so there is something to clear */
  narrowed: boolean;
  /** width of the search box */
  boxClass?: string;
  children?: ReactNode;
}

/** Search, filters and order of a list: a plain form whose answer is an address, so it works without scripts. */
export function FilterBar({ path, looksThrough, query, sorts, narrowed, boxClass = 'sm:w-64!', children }: Props) {
  return (
    <search>
      <form
        action={path}
        // The boxes hold what the address says, also when a link changed it.
        key={JSON.stringify(query)}
        className="no-print grid grid-cols-2 items-end gap-3 sm:flex sm:flex-wrap"
      >
        <label className="col-span-2 grid gap-1">
          <span className="label">Find by {looksThrough}</span>
          <input name="q" type="search" defaultValue={query.q} autoComplete="off" className={clsx('field', boxClass)} />
        </label>
        {children}
        {sorts && (
          <label className="grid gap-1 md:hidden">
            <span className="label">Order</span>
            <select name="sort" defaultValue={query.sort} className="field">
              {sorts.map(([value, label]) => (
                <option key={value} value={value}>
                  {label}
                </option>
              ))}
              {sorts.every(([value]) => value !== query.sort) && <option value={query.sort}>as chosen</option>}
            </select>
          </label>
        )}
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

interface FilterProps {
  name: string;
  label: string;
  value: string;
  /** the choice that leaves the list as it is: 'all crops' */
  all: string;
  options: readonly { value: string; label: string }[];
}

/** One filter of a list. */
export function Filter({ name, label, value, all, options }: FilterProps) {
  return (
    <label className="grid min-w-0 gap-1">
      <span className="label">{label}</span>
      <select name={name} defaultValue={value} className="field sm:w-auto! sm:max-w-56">
        <option value="">{all}</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </label>
  );
}
