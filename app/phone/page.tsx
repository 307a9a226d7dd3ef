import type { Metadata } from 'next';
import { headers } from 'next/headers';
import Link from 'next/link';
import { Notice } from '@/app/_components/notice';
import { getBank } from '@/lib/server/queries/bank';
import { phoneDoor } from '@/lib/server/tls/phone-door';
import { InstallPart } from './_parts/install-part';
import { ScanPart } from './_parts/scan-part';
import { TrustPart } from './_parts/trust-part';

export const metadata: Metadata = { title: 'Hilum on your phone' };

interface Props {
  searchParams: Promise<{ at?: string }>;
}

/** Open to anybody: whoever comes here with a new phone cannot have signed in yet. */
export default async function PhonePage({ searchParams }: Props) {
  const [{ at }, { address }, asked] = await Promise.all([searchParams, getBank(), headers()]);
  const door = phoneDoor(address);
  const phone = phoneOf(asked.get('user-agent') ?? '');
  return (
    <main className="mx-auto grid min-h-dvh w-full max-w-3xl content-start gap-6 px-4 py-8">
      <p className="text-lg font-bold">
        <Link href="/" className="text-ink no-underline">
          Hilum
        </Link>
      </p>
      <h1>Hilum on your phone</h1>
      {door.kind === 'this-computer-only' && <OnlyHere />}
      {door.kind === 'without-https' && <WithoutHttps />}
      {door.kind === 'own-authority' && (
        <>
          <p className="say">Once on each phone: tell it to trust this bank, then put the bench on its home screen.</p>
          <ScanPart addresses={door.addresses} chosen={at} isKnown={false} />
          <TrustPart called={door.called} fingerprint={door.fingerprint} phone={phone} />
          <InstallPart number={2} address={door.addresses[0]} phone={phone} />
        </>
      )}
      {door.kind === 'trusted' && (
        <>
          <p className="say">Put the bench on your phone’s home screen: it opens like any app, also with no signal.</p>
          <ScanPart addresses={door.addresses} chosen={at} isKnown />
          <InstallPart number={1} address={door.addresses[0]} phone={phone} />
        </>
      )}
    </main>
  );
}

/** Which instructions to unfold; both are there. */
function phoneOf(userAgent: string): 'android' | 'iphone' | null {
  if (/Android/.test(userAgent)) return 'android';
  return /iPhone|iPad/.test(userAgent) ? 'iphone' : null;
}

function OnlyHere() {
  return (
    <div className="sheet grid gap-4">
      <p className="say">As Hilum runs now, only this computer can open it.</p>
      <ol className="grid list-decimal gap-2 pl-6">
        <li>Stop Hilum: Ctrl+C where it was started.</li>
        <li>
          Start it for phones too: <code className="figures">HOST=0.0.0.0 npm run up</code>
        </li>
        <li>Open this page again. It then shows a code for phones to scan.</li>
      </ol>
      <p className="quiet">
        From then on everybody signs in. The first visit makes a steward’s account; the steward adds the others.
      </p>
    </div>
  );
}

function WithoutHttps() {
  return (
    <Notice kind="caution">
      <p>
        Hilum was started so that others can come in, but without https. Phones then give it no camera, and counting
        without a signal does not work. Start it with <code className="figures">HOST=0.0.0.0 npm run up</code>.
      </p>
    </Notice>
  );
}
