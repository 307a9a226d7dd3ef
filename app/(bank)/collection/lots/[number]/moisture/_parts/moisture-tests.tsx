import Link from 'next/link';
import { TableHead } from '@/app/_components/table-head';
import { formatCount, formatDate } from '@/app/_format/figures';
import { formatMoisture, moistureSourceWords } from '@/app/_format/moisture';
import { packetPath } from '@/app/_format/store-path';
import { moistureMethod } from '@/lib/domain/moisture/moisture-methods';
import { CONTAINERS, isHermetic } from '@/lib/domain/stock/containers';
import type { LotMoisture, PacketMoisture, RecordedMoistureTest } from '@/lib/server/queries/lot-moisture';
import { trustInWords } from './test-words';

/** Every moisture test of the lot, newest first; those that were corrected stay readable. */
export function MoistureTests({
  tests,
  newPath,
  mayRecord,
}: {
  tests: LotMoisture['tests'];
  newPath: string;
  mayRecord: boolean;
}) {
  return (
    <section className="grid gap-3" aria-labelledby="moisture-tests">
      <h2 id="moisture-tests">Tests</h2>
      <ul className="grid gap-3">
        {tests.map((test) => (
          <li key={test.id} id={test.number} className="sheet grid gap-2">
            <MoistureTest test={test} />
            {mayRecord && test.correctedByNumber === null && (
              <Link
                href={`${newPath}?corrects=${encodeURIComponent(test.number)}`}
                className="button no-print justify-self-start"
              >
                Correct {test.number}
              </Link>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function MoistureTest({ test }: { test: RecordedMoistureTest }) {
  const stands = test.correctedByNumber === null;
  return (
    <>
      <h3 className="flex flex-wrap items-baseline gap-x-3">
        <span className="figures">{test.number}</span>
        <span className={stands ? undefined : 'font-normal line-through'}>{formatMoisture(test.moisturePercent)}</span>
        <span className="quiet font-normal">
          {formatDate(test.testedOn)}, {moistureMethod(test.method).label}
        </span>
      </h3>
      {!stands && (
        <p>
          Corrected by <a href={`#${test.correctedByNumber}`}>{test.correctedByNumber}</a>: it no longer counts.
        </p>
      )}
      {test.correctsNumber && (
        <p>
          In place of <a href={`#${test.correctsNumber}`}>{test.correctsNumber}</a>.
        </p>
      )}
      <p className="max-w-prose">{trustInWords(test)}</p>
      <p className="label">
        {test.packet ? (
          <>
            Seed from <Link href={packetPath(test.packet.number)}>{test.packet.number}</Link>
            {test.seedsUsed !== null && `, ${formatCount(test.seedsUsed)} seeds used up`}.
          </>
        ) : (
          'Seed from no packet: it says nothing of a sealed stay.'
        )}
      </p>
      {test.oven && <Dishes test={test} oven={test.oven} />}
      {test.notes && <p className="wrap-anywhere whitespace-pre-line">{test.notes}</p>}
    </>
  );
}

function Dishes({ test, oven }: { test: RecordedMoistureTest; oven: NonNullable<RecordedMoistureTest['oven']> }) {
  const predried = test.dishes.some(({ beforePreDryingG }) => beforePreDryingG !== null);
  const columns = ['dish', 'empty, g', 'fresh, g', 'dried, g', ...(predried ? ['pre-dried, g'] : []), 'moisture, %'];
  return (
    <details>
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">The dishes</summary>
      <table className="ledger stacked">
        <TableHead columns={columns} words={['dish']} />
        <tbody>
          {test.dishes.map((dish, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: dishes have no name but their place
            <tr key={index}>
              <th scope="row" className="row-head">
                Dish {index + 1}
              </th>
              <td className="number" data-label="empty, g">
                {dish.dishG}
              </td>
              <td className="number" data-label="fresh, g">
                {dish.dishAndFreshG}
              </td>
              <td className="number" data-label="dried, g">
                {dish.dishAndDryG}
              </td>
              {predried && (
                <td className="number" data-label="pre-dried, g">
                  {dish.beforePreDryingG === null ? 'no' : `${dish.beforePreDryingG} to ${dish.afterPreDryingG}`}
                </td>
              )}
              <td className="number" data-label="moisture, %">
                {oven.dishPercents[index]?.toFixed(2)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** What each packet is reckoned at now, and where that comes from. */
export function PacketMoistures({ packets }: { packets: readonly PacketMoisture[] }) {
  const placed = packets.filter(({ stay }) => stay !== null);
  if (placed.length === 0) return null;
  return (
    <section className="grid gap-3" aria-labelledby="packet-moisture">
      <h2 id="packet-moisture">Packets now</h2>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <TableHead columns={['packet', 'where', 'reckoned at', 'from']} words={['packet', 'where', 'from']} />
          <tbody>
            {placed.map(({ number, storeName, stay }) => {
              if (!stay) return null;
              const container = CONTAINERS.find(({ key }) => key === stay.container)?.label ?? stay.container;
              const sealed = isHermetic(stay.container);
              return (
                <tr key={number}>
                  <th scope="row" className="row-head">
                    <Link href={packetPath(number)} className="figures text-ink underline underline-offset-3">
                      {number}
                    </Link>
                  </th>
                  <td data-label="where">
                    {storeName}, {container}
                  </td>
                  <td className="number" data-label="reckoned at">
                    {sealed && stay.moisturePercent !== null ? formatMoisture(stay.moisturePercent) : '–'}
                  </td>
                  <td data-label="from">{sealed ? sealedSource(stay) : 'open: it follows the air of the store'}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function sealedSource({ measured, moisturePercent, from }: NonNullable<PacketMoisture['stay']>): string {
  if (measured) return moistureSourceWords({ kind: 'measured', tests: measured.tests });
  return moisturePercent === null
    ? 'not measured: that of seed from an ordinary room is assumed'
    : `${moistureSourceWords({ kind: 'written' })}, ${formatDate(from)}`;
}
