import Link from 'next/link';
import type { ReactNode } from 'react';
import { type ClimateAddress, climatePath } from '@/app/_format/climate-path';
import { addDays, daysBetween } from '@/lib/domain/calendar/calendar-date';
import type { StoreClimatePage } from '@/lib/server/queries/store-climate';

interface Props {
  storeId: string;
  page: StoreClimatePage;
  typed: Record<string, string | string[] | undefined>;
  /** what is wrong with a field of the address, by its name */
  errors: Record<string, string>;
  address: ClimateAddress;
}

const LENGTHS = [
  { name: '5 years', days: 1826 },
  { name: 'Year', days: 365 },
  { name: 'Quarter', days: 91 },
  { name: 'Month', days: 30 },
  { name: 'Week', days: 7 },
  { name: 'Day', days: 1 },
] as const;

/** Which days are looked at: how long a stretch, earlier or later, or from day to day. All of it is in the address. */
export function ClimateControls({ storeId, page, typed, errors, address }: Props) {
  const { from, to, days, logged, today } = page;
  const show = (stretch: { from: string; to: string }) => climatePath(storeId, { ...address, ...stretch });
  const later = addDays(to, days) > today ? { from: addDays(today, 1 - days), to: today } : moved(page, days);
  const wholeLog = logged && { from: logged.from, to: logged.to };
  return (
    <div className="no-print grid gap-3">
      <nav aria-label="Length of the stretch" className="flex flex-wrap gap-2">
        {LENGTHS.map((length) => (
          <ButtonLink
            key={length.name}
            href={show({ from: addDays(to, 1 - length.days), to })}
            isCurrent={days === length.days}
          >
            {length.name}
          </ButtonLink>
        ))}
        {wholeLog && (
          <ButtonLink href={show(wholeLog)} isCurrent={from === wholeLog.from && to === wholeLog.to}>
            All that was logged
          </ButtonLink>
        )}
      </nav>
      <nav aria-label="Earlier or later" className="flex flex-wrap gap-2">
        <ButtonLink href={show(moved(page, -days))}>← Earlier</ButtonLink>
        {to < today && <ButtonLink href={show(later)}>Later →</ButtonLink>}
      </nav>
      <StretchForm storeId={storeId} page={page} typed={typed} errors={errors} />
    </div>
  );
}

const moved = ({ from, to }: StoreClimatePage, days: number) => ({ from: addDays(from, days), to: addDays(to, days) });

function ButtonLink({ href, isCurrent = false, children }: { href: string; isCurrent?: boolean; children: ReactNode }) {
  return (
    <Link
      href={href}
      scroll={false}
      prefetch={false}
      aria-current={isCurrent ? 'true' : undefined}
      className={`button ${isCurrent ? 'bg-sunk! underline!' : ''}`}
    >
      {children}
    </Link>
  );
}

function StretchForm({ storeId, page, typed, errors }: Omit<Props, 'address'>) {
  const usualHumidity = Math.round(page.usual.relativeHumidity * 100);
  const value = (name: string, standard = '') => {
    const written = typed[name];
    return typeof written === 'string' ? written : standard;
  };
  const fields = [
    { name: 'from', label: 'From', type: 'date', value: value('from', page.from), size: 'sm:w-44!' },
    { name: 'to', label: 'To', type: 'date', value: value('to', page.to), size: 'sm:w-44!' },
    {
      name: 'tolerance',
      label: `Tolerance °C (usual ${page.usual.temperatureC})`,
      type: 'text',
      value: value('tolerance'),
      size: 'sm:w-52!',
    },
    {
      name: 'humidity',
      label: `Tolerance % (usual ${usualHumidity})`,
      type: 'text',
      value: value('humidity'),
      size: 'sm:w-52!',
    },
  ] as const;
  return (
    <form
      action={climatePath(storeId)}
      // The fields hold what the address says, also when a link changed it.
      key={JSON.stringify([typed, daysBetween(page.from, page.to)])}
      className="grid grid-cols-2 items-start gap-3 sm:flex sm:flex-wrap"
    >
      {fields.map((field) => {
        const error = errors[field.name];
        return (
          <div key={field.name} className="grid content-start gap-1">
            <label htmlFor={`climate-${field.name}`} className="label">
              {field.label}
            </label>
            <input
              id={`climate-${field.name}`}
              name={field.name}
              type={field.type}
              inputMode={field.type === 'text' ? 'decimal' : undefined}
              max={field.type === 'date' ? page.today : undefined}
              defaultValue={field.value}
              autoComplete="off"
              aria-invalid={error ? true : undefined}
              aria-describedby={`climate-${field.name}-error`}
              className={`field figures ${field.size}`}
            />
            <p id={`climate-${field.name}-error`} className="text-sm font-semibold text-madder empty:hidden">
              {error}
            </p>
          </div>
        );
      })}
      <button type="submit" className="button self-end max-sm:col-span-2">
        Show
      </button>
    </form>
  );
}
