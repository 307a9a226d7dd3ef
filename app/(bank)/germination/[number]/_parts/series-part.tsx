import Link from 'next/link';
import { Caption } from '@/app/_components/caption';
import { DateField, HiddenField, SelectField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { formatCount, formatDate } from '@/app/_format/figures';
import { trayPath } from '@/app/_format/tray-path';
import { getLotForTesting } from '@/lib/server/queries/lots-for-testing';
import { findSeries, type TestSeries } from '@/lib/server/queries/test-series';
import { today } from '@/lib/server/today';
import { packetOptions, takenOutOptions } from '../../_parts/packet-options';
import { setGroup } from '../actions';
import { comingLookInWords, seriesInWords } from './series-words';

/** A test in groups: what it says after the groups counted so far, and the next group where the plan asks for one. */
export async function SeriesPart({ seriesId, mayWrite }: { seriesId: string; mayWrite: boolean }) {
  const series = await findSeries(seriesId);
  if (!series) return null;
  const comingLook = comingLookInWords(series);
  return (
    <section className="sheet grid gap-4" aria-labelledby="series-title">
      <h2 id="series-title">A test in groups</h2>
      <Caption text={seriesInWords(series)} />
      {comingLook && <p className="-mt-2 max-w-prose text-ink-2">{comingLook}</p>}
      <table className="ledger stacked">
        <thead>
          <tr>
            <th scope="col">group</th>
            <th scope="col">set</th>
            <th scope="col" className="number">
              seeds
            </th>
            <th scope="col" className="number">
              alive
            </th>
          </tr>
        </thead>
        <tbody>
          {series.groups.map((group) => (
            <tr key={group.id}>
              <th scope="row" className="row-head">
                {group.groupNumber}{' '}
                <Link href={trayPath(group.number)} className="figures text-ink underline underline-offset-3">
                  {group.number}
                </Link>
              </th>
              <td data-label="set">{formatDate(group.setOn)}</td>
              <td className="number" data-label="seeds">
                {formatCount(group.seeds)}
              </td>
              <td className="number" data-label="alive">
                {group.result ? formatCount(group.result.alive) : OUTCOMES[group.status]}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {mayWrite && series.soFar.nextSeeds !== null && <NextGroupForm series={series} seeds={series.soFar.nextSeeds} />}
    </section>
  );
}

const OUTCOMES = { open: 'being counted', closed: '–', 'given-up': 'given up' } as const;

async function NextGroupForm({ series, seeds }: { series: TestSeries; seeds: number }) {
  const lot = await getLotForTesting(series.lot.number);
  if (!lot) return null;
  const options = [
    ...takenOutOptions(lot.takenOut).map(({ value, label }) => ({ value: `taken:${value}`, label })),
    ...packetOptions(lot.packets).map(({ value, label }) => ({ value: `packet:${value}`, label })),
  ];
  return (
    <Form action={setGroup} className="no-print grid gap-4">
      <HiddenField name="seriesId" value={series.seriesId} />
      <div className="grid max-w-2xl gap-4 sm:grid-cols-2">
        <SelectField
          name="seedFrom"
          label={`${seeds} seeds from`}
          options={options}
          empty="choose"
          defaultValue={options.length === 1 ? options[0]?.value : ''}
        />
        <DateField name="setOn" label="Set on" defaultValue={today()} max={today()} />
        <TextField name="place" label="Where it stands" defaultValue={series.groups.at(-1)?.place} optional />
      </div>
      <div>
        <SubmitButton busy="Setting …">Set the next group</SubmitButton>
      </div>
    </Form>
  );
}
