import Link from 'next/link';
import { DeadEnd } from '@/app/_components/dead-end';

/** What a page of the bank shows for an unknown accession, lot, test or store. */
export default function BankNotFound() {
  return (
    <DeadEnd
      title="Not in the collection"
      action={
        <Link href="/collection" className="button main">
          To the collection
        </Link>
      }
    >
      <p>There is nothing under this address. It may be mistyped, or belong to another bank.</p>
    </DeadEnd>
  );
}
