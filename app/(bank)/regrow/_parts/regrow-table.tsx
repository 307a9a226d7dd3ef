import Link from 'next/link';
import { ChanceBar } from '@/app/_components/chance-bar';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { Sentence } from '@/app/_components/sentence';
import { formatCount, formatPercent } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import type { RegrowRow } from '@/lib/server/queries/regrow';

/** The regrow list: one accession a row, its lots folded under it. On a phone each row reads as a card. */
export function RegrowTable({ rows }: { rows: RegrowRow[] }) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked tight">
        <thead>
          <tr>
            <th scope="col">Accession and lot</th>
            <th scope="col">Why</th>
            <th scope="col" className="number">
              alive
            </th>
            <th scope="col">chance below the line</th>
            <th scope="col" className="number">
              seed / need
            </th>
            <th scope="col">last safe season</th>
            <th scope="col">judged and decided</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <AccessionRow key={row.accessionId} row={row} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function AccessionRow({ row }: { row: RegrowRow }) {
  const decide = `/regrow/${encodeURIComponent(row.accessionNumber)}`;
  return (
    <tr>
      <th scope="row" className="row-head">
        <Link
          href={decide}
          className="font-bold text-ink underline decoration-rule underline-offset-3 hover:decoration-ink"
        >
          {row.accessionName}
        </Link>{' '}
        <span className="quiet font-normal">{row.cropName}</span>
        {row.keyLotNumber ? (
          <Link href={lotPath(row.keyLotNumber)} className="figures block w-fit py-1 text-sm font-normal text-ink">
            {row.keyLotNumber}
          </Link>
        ) : (
          <span className="figures block text-sm font-normal">{row.accessionNumber}</span>
        )}
      </th>
      <td className="why">
        <Sentence text={row.sentence} />
        {row.lots.length > 1 && <OtherLots row={row} />}
      </td>
      <td className="number" data-label="alive">
        {row.viabilityMedian === null ? '–' : formatPercent(row.viabilityMedian)}
      </td>
      <td data-label="chance below">
        {row.chanceBelow === null ? '–' : <ChanceBar chance={row.chanceBelow} action={row.action} />}
      </td>
      <td className="number" data-label="seed / need">
        {formatCount(row.seedsLeft)} / {row.seedsNeeded === null ? '–' : formatCount(row.seedsNeeded)}
      </td>
      <td className="figures" data-label="last safe season">
        {lastSafeSeason(row)}
      </td>
      <td className="whitespace-nowrap">
        <JudgementMark
          action={row.action}
          label={row.action === 'regrow' && row.season ? `Regrow ${row.season}` : undefined}
        />
        {row.decision ? (
          <Link href={decide} className="mt-1 block w-fit py-1 text-sm text-ink underline underline-offset-3">
            Decided: {decisionInWords(row.decision)}
          </Link>
        ) : (
          <Link href={decide} className="no-print mt-1 block w-fit py-1 text-sm text-leaf underline underline-offset-3">
            Decide<span className="sr-only"> for {row.accessionName}</span>
          </Link>
        )}
      </td>
    </tr>
  );
}

function OtherLots({ row }: { row: RegrowRow }) {
  return (
    <details className="mt-1">
      <summary className="cursor-pointer text-sm text-ink-2">all {row.lots.length} lots</summary>
      <ul className="mt-1 grid gap-1 text-sm">
        {row.lots.map((lot) => (
          <li key={lot.lotNumber}>
            <Link href={lotPath(lot.lotNumber)} className="figures text-ink underline underline-offset-3">
              {lot.lotNumber}
            </Link>
            : {lot.viabilityMedian === null ? 'no forecast' : `${formatPercent(lot.viabilityMedian)} alive`},{' '}
            {formatCount(lot.seedsLeft)} seeds{lot.storeName ? `, ${lot.storeName}` : ''}
          </li>
        ))}
      </ul>
    </details>
  );
}

function lastSafeSeason(row: RegrowRow): string {
  if (row.rescue) return 'past';
  if (row.lastSafeSeason !== null) return String(row.lastSafeSeason);
  return row.viabilityMedian === null ? '–' : 'far off';
}

function decisionInWords({ action, season }: { action: string; season: number }): string {
  if (action === 'regrow') return `regrow in ${season}`;
  return action === 'test-first' ? `test first (${season})` : `leave in ${season}`;
}
