import Link from 'next/link';
import { DeadEnd } from '@/app/_components/dead-end';

export default function NoTest() {
  return (
    <DeadEnd
      title="No such test"
      action={
        <Link href="/stores/scan" className="button main">
          Scan another
        </Link>
      }
    >
      <p>
        No germination test of this collection has the number on this label. It may be another bank's, or the number was
        mistyped.
      </p>
    </DeadEnd>
  );
}
