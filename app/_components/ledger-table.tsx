import Link from 'next/link';
import { signedCount, spreadInWords } from '@/app/_format/balance-words';
import { formatCount, formatDate, formatGrams } from '@/app/_format/figures';
import { lotPath, testPath, viabilityTestPath } from '@/app/_format/links';
import { packetPath } from '@/app/_format/store-path';
import { reasonInWords } from '@/lib/domain/stock/movement-reasons';
import type { LedgerLine } from '@/lib/server/queries/ledger-lines';
import { TakeBackButton } from './take-back-button';

interface Props {
  lines: (LedgerLine & { balance?: number })[];
  /** read before the table by who cannot see it: 'Ledger of packet P-00012, oldest entry first' */
  caption: string;
  /** which seed it was: named where lines of several packets stand together */
  of?: 'packet' | 'packet and lot';
  /** the person may take lines back */
  mayChange: boolean;
  /** where to go on after a line was taken back: the address of this page */
  back: string;
}

/** Lines of the ledger. With `balance`, what the packet held after each; on a phone every line reads as a card. */
export function LedgerTable({ lines, caption, of, mayChange, back }: Props) {
  const balances = lines.some((line) => line.balance !== undefined);
  return (
    <table className="ledger stacked">
      <caption className="sr-only">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          {of && <th scope="col">{of === 'packet' ? 'Packet' : 'Seed'}</th>}
          <th scope="col">What</th>
          <th scope="col" className="number">
            Seeds
          </th>
          {balances && (
            <th scope="col" className="number">
              Left
            </th>
          )}
          {mayChange && (
            <th scope="col">
              <span className="sr-only">Take back</span>
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.id}>
            <td className="whitespace-nowrap" data-label="day">
              {formatDate(line.on)}
            </td>
            {of && (
              <td data-label={of === 'packet' ? 'packet' : 'seed'}>
                <Link
                  href={packetPath(line.packetNumber)}
                  className="figures text-ink underline decoration-rule underline-offset-3"
                >
                  {line.packetNumber}
                </Link>
                {of === 'packet and lot' && (
                  <span className="label block">
                    {line.accessionName}{' '}
                    <Link
                      href={lotPath(line.lotNumber)}
                      className="figures text-ink underline decoration-rule underline-offset-3"
                    >
                      {line.lotNumber}
                    </Link>
                  </span>
                )}
              </td>
            )}
            <What line={line} />
            <td className="number" data-label="seeds">
              {signedCount(line.seeds)}
              <Measured line={line} />
            </td>
            {balances && (
              <td className="number" data-label="left">
                {line.balance !== undefined && formatCount(line.balance)}
              </td>
            )}
            {mayChange && (
              <td className="text-right max-md:empty:hidden">
                {line.mayBeTakenBack && (
                  <TakeBackButton
                    movementId={line.id}
                    called={`the ${reasonInWords(line.reason, line.seeds)} of ${formatDate(line.on)}`}
                    back={back}
                  />
                )}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function What({ line }: { line: LedgerLine }) {
  const { corrects } = line;
  return (
    <td data-label="what" className="wrap-anywhere">
      {corrects
        ? `takes back the ${reasonInWords(corrects.reason, corrects.seeds)} of ${formatDate(corrects.on)} (${signedCount(corrects.seeds)})`
        : reasonInWords(line.reason, line.seeds)}
      <Belongs line={line} />
      {line.takenBackOn && <b className="text-madder"> taken back on {formatDate(line.takenBackOn)}</b>}
      {line.note && <span className="label block">{line.note}</span>}
      {line.byName && <span className="label block">{line.byName}</span>}
    </td>
  );
}

function Belongs({ line: { belongsTo, note } }: { line: LedgerLine }) {
  if (!belongsTo || note?.includes(belongsTo.number)) return null;
  const { kind, number } = belongsTo;
  if (kind === 'moisture-test') return <span className="figures"> {number}</span>;
  const href = {
    test: testPath(number),
    'viability-test': viabilityTestPath(number),
    'stock-take': `/stores/stock-takes/${encodeURIComponent(number)}`,
    request: `/stores/sharing/${encodeURIComponent(number)}`,
  }[kind];
  return (
    <>
      {' '}
      <Link href={href} className="figures text-ink underline decoration-rule underline-offset-3">
        {number}
      </Link>
    </>
  );
}

/** How the amount was found: its grams, and how far the seeds may be off. */
function Measured({ line: { grams, seedsSd } }: { line: LedgerLine }) {
  const parts = [grams === null ? null : formatGrams(Math.abs(grams)), spreadInWords(seedsSd)].filter(Boolean);
  return parts.length > 0 && <span className="quiet block text-sm">{parts.join(', ')}</span>;
}
