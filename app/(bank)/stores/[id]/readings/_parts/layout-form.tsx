import { NumberField, type Option, SelectField } from '@/app/_components/form/fields';
import type { GuessedLayout } from '@/lib/domain/logger/guess-logger';
import { ZONE_IN_THE_FILE } from '@/lib/domain/logger/logger-layout';
import { fixedZone } from '@/lib/domain/logger/zone-clock';
import { DELIMITER_NAMES, delimiterName } from '@/lib/schemas/reading-import';

interface Props {
  address: string;
  layout: GuessedLayout;
  headings: readonly string[];
}

const ORDER_WORDS = {
  'day-month-year': 'day, month, year',
  'month-day-year': 'month, day, year',
  'year-month-day': 'year, month, day',
  'epoch-seconds': 'seconds since 1970',
  'day-number': 'days since 1899, as spreadsheet programs count',
} as const;
const QUARTERS = [
  ...Array.from({ length: 27 }, (_, index) => (index - 12) * 3600),
  ...[-34_200, -12_600, 12_600, 16_200, 19_800, 20_700, 23_400, 34_200],
].sort((a, b) => a - b);

/** How the file is read: guessed, and changeable. Sent as an address, so that it can be looked at again and shared. */
export function LayoutForm({ address, layout, headings }: Props) {
  const columns: Option[] = headings.map((heading, column) => ({
    value: String(column),
    label: heading ? `${column + 1}: ${heading}` : `column ${column + 1}`,
  }));
  return (
    <form action={address} className="sheet grid gap-5">
      <div className="grid gap-x-6 gap-y-4 sm:grid-cols-2 lg:grid-cols-3">
        <SelectField
          name="zone"
          label="Time zone of the logger's clock"
          hint="Most loggers stay on winter time all year: then choose the fixed offset."
          options={zoneOptions(layout.zone)}
          empty="choose …"
          defaultValue={layout.zone}
        />
        <SelectField
          name="dateOrder"
          label="Dates are written"
          options={Object.entries(ORDER_WORDS).map(([value, label]) => ({ value, label }))}
          empty="choose …"
          defaultValue={layout.dateOrder}
        />
        <SelectField
          name="temperatureUnit"
          label="Temperatures are in"
          options={[
            { value: 'C', label: '°C' },
            { value: 'F', label: '°F' },
          ]}
          defaultValue={layout.temperatureUnit}
        />
        <SelectField name="dateColumn" label="Column of the date" options={columns} defaultValue={layout.dateColumn} />
        <SelectField
          name="timeColumn"
          label="Column of the time"
          options={columns}
          empty="in the same column as the date"
          defaultValue={layout.timeColumn}
        />
        <SelectField
          name="temperatureColumn"
          label="Column of the temperature"
          options={columns}
          defaultValue={layout.temperatureColumn}
        />
        <SelectField
          name="humidityColumn"
          label="Column of the humidity"
          options={columns}
          empty="none"
          defaultValue={layout.humidityColumn}
        />
        <SelectField
          name="delimiter"
          label="Between cells stands a"
          options={DELIMITER_NAMES.map((value) => ({ value, label: value === 'spaces' ? 'run of spaces' : value }))}
          defaultValue={delimiterName(layout.delimiter)}
        />
        <NumberField name="firstLine" label="Line of the first reading" whole defaultValue={layout.firstLine} />
      </div>
      <button type="submit" className="button w-fit">
        Read the file again
      </button>
    </form>
  );
}

function zoneOptions(chosen: string | null): Option[] {
  const fixed = QUARTERS.map((offset) => {
    const zone = fixedZone(offset);
    return { value: zone, label: `${zone}, the same all year` };
  });
  const named = Intl.supportedValuesOf('timeZone')
    .filter((zone) => zone.includes('/'))
    .map((zone) => ({ value: zone, label: `${zone}, with its summer time` }));
  const inFile = chosen === ZONE_IN_THE_FILE ? [{ value: ZONE_IN_THE_FILE, label: 'written in the file' }] : [];
  return [...inFile, ...fixed, ...named];
}
