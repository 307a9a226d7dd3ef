import Link from 'next/link';
import { CheckField, TextField } from '@/app/_components/form/fields';
import { formatCount, formatGrams } from '@/app/_format/figures';
import { gramsToWeighOut } from '@/lib/domain/stock/grams-to-weigh-out';
import type { RequestLine } from '@/lib/server/queries/request-lines';
import { HindranceNotice } from './hindrance-notice';
import { LineHead } from './lines-form';

/** One line before it goes: what leaves which packet, what stands against it, and what must be ticked. */
export function LineToSend({ line, listPath }: { line: RequestLine; listPath: string }) {
  const { accession, lot, packet, seeds, hindrance } = line;
  const grams = seeds === null ? null : gramsToWeighOut(seeds, lot?.thousandSeedWeightG ?? null);
  return (
    <>
      <LineHead line={line} />
      <p>
        {seeds === null ? 'No number of seeds' : `${formatCount(seeds)} seeds`}
        {grams !== null && ` (${formatGrams(grams)})`} from{' '}
        <span className="figures whitespace-nowrap">{packet?.number ?? 'no packet'}</span>
        {packet?.storeName && `, ${packet.storeName}`}
        {line.note && <span className="label block">{line.note}</span>}
      </p>
      <HindranceNotice name={`line.${line.id}`} sentence={hindrance?.sentence ?? null}>
        {hindrance && !hindrance.mayBeOverruled && <Link href={listPath}>Change the list</Link>}
      </HindranceNotice>
      {hindrance?.mayBeOverruled && (
        <TextField
          name={`overrule.${line.id}`}
          label="Send it all the same, because"
          hint="Kept in the ledger and the history."
        />
      )}
      {accession.sharing === 'with-terms' && (
        <CheckField
          name={`terms.${line.id}`}
          label="The recipient has agreed to the terms"
          hint={accession.sharingTerms ?? undefined}
        />
      )}
      {lot?.treatment && (
        <CheckField
          name={`treated.${line.id}`}
          label="The bag says how this seed is treated"
          hint={`Treated: ${lot.treatment}. Never food or feed.`}
        />
      )}
    </>
  );
}
