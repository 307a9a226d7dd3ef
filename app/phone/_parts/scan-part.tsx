import Link from 'next/link';
import { Notice } from '@/app/_components/notice';
import { CodePicture } from './code-picture';

interface Props {
  addresses: string[];
  /** place of an address in the list, from 0 */
  chosen: string | undefined;
  /** false where a phone is warned at first */
  isKnown: boolean;
}

/** For the computer's screen: on the phone itself there is nothing to scan. */
export function ScanPart({ addresses, chosen, isKnown }: Props) {
  const address = addresses[Number(chosen)] ?? addresses[0];
  if (!address) {
    return (
      <Notice kind="caution">
        No address was found at which phones could reach this computer. Is it in the same network as they are? Open this
        page again when it is.
      </Notice>
    );
  }
  const page = `${address}/phone`;
  return (
    <section className="sheet hidden gap-6 md:flex">
      <CodePicture text={page} called={`QR code of ${page}`} />
      <div className="grid min-w-0 content-start gap-3">
        <h2>Open this page on the phone</h2>
        <p>The phone must be in the same network. Point its camera at the code, or type</p>
        <p className="figures wrap-anywhere text-lg font-semibold">{page}</p>
        {!isKnown && (
          <p className="quiet">
            The phone will warn that the connection is not private, since it does not know this bank yet. Go on to this
            page, and follow it before you type a password.
          </p>
        )}
        {addresses.length > 1 && (
          <nav aria-label="Addresses" className="flex flex-wrap items-baseline gap-x-4 gap-y-1 text-sm">
            <span className="quiet">Does it not open? Try</span>
            {addresses.map(
              (each, index) =>
                each !== address && (
                  <Link
                    key={each}
                    href={`/phone?at=${index}`}
                    className="figures inline-flex min-h-6 items-center text-leaf underline underline-offset-3"
                  >
                    {each.replace('https://', '')}
                  </Link>
                ),
            )}
          </nav>
        )}
      </div>
    </section>
  );
}
