import Link from 'next/link';
import { DeadEnd } from '@/app/_components/dead-end';

export default function NoPacket() {
  return (
    <DeadEnd
      title="No such packet"
      action={
        <Link href="/stores/scan" className="button main">
          Scan another
        </Link>
      }
    >
      <p>
        No packet of this collection has the number on this label. It may be another bank's, or the number was mistyped.
      </p>
    </DeadEnd>
  );
}
