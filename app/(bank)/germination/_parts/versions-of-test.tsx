import Link from 'next/link';
import { Notice } from '@/app/_components/notice';

interface Props {
  test: { number: string; correctedByNumber: string | null; versions: readonly { number: string }[] };
  path: (number: string) => string;
}

/** Which version of a corrected test this is, and which one speaks; nothing for a test that stands as it was written. */
export function VersionsOfTest({ test, path }: Props) {
  if (test.versions.length < 2) return null;
  const last = test.versions.at(-1)?.number ?? test.number;
  const line = (
    <ol className="mt-1 flex flex-wrap gap-x-4">
      {test.versions.map((version, index) => (
        <li key={version.number} className="flex min-h-11 items-center gap-2">
          {version.number === test.number ? (
            <b className="figures">{version.number}</b>
          ) : (
            <Link href={path(version.number)} className="figures text-ink underline underline-offset-3">
              {version.number}
            </Link>
          )}
          {index === 0 ? 'as first written' : 'correction'}
        </li>
      ))}
    </ol>
  );
  return test.correctedByNumber ? (
    <Notice kind="caution">
      <b>This test was corrected.</b> It stays as it was written; {last} speaks for the lot.
      {line}
    </Notice>
  ) : (
    <Notice kind="note">
      This is a correction; it speaks for the lot.
      {line}
    </Notice>
  );
}
