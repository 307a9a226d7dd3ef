import { formatCount, formatDate, formatGrams } from '@/app/_format/figures';
import { isolationLabel } from '@/app/_format/isolation-label';
import { gramsToWeighOut } from '@/lib/domain/stock/grams-to-weigh-out';
import type { LastGermination } from '@/lib/server/queries/last-germination';
import type { RequestLine } from '@/lib/server/queries/request-lines';
import { germinationInWords } from '../../_parts/germination-words';

/** One bag of the parcel: where its seed is taken from, how much, and what the recipient should know of it. */
export function PackLine({ line, germination }: { line: RequestLine; germination: LastGermination | undefined }) {
  const { accession, lot, packet, movement } = line;
  const seeds = movement?.seeds ?? line.seeds ?? 0;
  const grams = seeds > 0 ? gramsToWeighOut(seeds, lot?.thousandSeedWeightG ?? null) : null;
  const facts: [string, string | null | undefined][] = [
    ['Take from', packet && [packet.number, packet.storeName].filter(Boolean).join(', ')],
    ['Seeds', `${formatCount(seeds)}${grams === null ? ', count them' : ` = ${formatGrams(grams)}`}`],
    ['Germination', germinationInWords(germination)],
    ['Harvested', lot && formatDate(lot.harvestedOn)],
    ['Isolation', lot && isolationLabel(lot.isolation)],
  ];
  return (
    <li className="sheet grid grid-cols-[auto_1fr] gap-x-4 gap-y-2 print:break-inside-avoid print:border-x-0 print:px-0 print:py-2">
      <span aria-hidden className="mt-1 size-5 border-2 border-ink" />
      <div className="grid min-w-0 gap-2">
        <h2 className="wrap-anywhere">
          {accession.name} <span className="quiet font-normal">{accession.cropName}</span>{' '}
          <span className="figures font-normal whitespace-nowrap">{lot?.number}</span>
        </h2>
        <dl className="grid grid-cols-2 gap-x-6 gap-y-1 sm:grid-cols-3 print:grid-cols-5">
          {facts.map(([name, value]) => (
            <div key={name} className="min-w-0">
              <dt className="label">{name}</dt>
              <dd className="wrap-anywhere">{value ?? '–'}</dd>
            </div>
          ))}
        </dl>
        {lot?.treatment && (
          <p>
            <b>Treated seed ({lot.treatment}): not for food, feed or oil.</b>
          </p>
        )}
        {accession.sharing === 'with-terms' && accession.sharingTerms && <p>Terms: {accession.sharingTerms}</p>}
        {line.note && <p>{line.note}</p>}
        {movement?.takenBackOn && <p className="font-semibold">Taken back on {formatDate(movement.takenBackOn)}</p>}
      </div>
    </li>
  );
}
