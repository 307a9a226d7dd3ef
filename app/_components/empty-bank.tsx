import Link from 'next/link';
import { PageHead } from './page-head';

/** What a steward sees first in a bank without seed: where to begin. */
export function EmptyBank() {
  return (
    <>
      <PageHead title="An empty bank" below="Three ways to begin." />
      <ol className="grid gap-4 sm:grid-cols-3">
        <li className="sheet grid content-between gap-3">
          <p>
            <b>Bring the old spreadsheet.</b> Accessions first, then lots, then germination tests, each as a CSV file.
          </p>
          <Link href="/import" className="button main">
            Import a spreadsheet
          </Link>
        </li>
        <li className="sheet grid content-between gap-3">
          <p>
            <b>Name the places.</b> A freezer, a fridge, a cool room, each with its temperature.
          </p>
          <Link href="/stores/new" className="button">
            Add a store
          </Link>
        </li>
        <li className="sheet grid content-between gap-3">
          <p>
            <b>Start with one variety.</b> Then log its cleaned seed into a store.
          </p>
          <Link href="/collection/accessions/new" className="button">
            Add an accession
          </Link>
        </li>
      </ol>
    </>
  );
}
