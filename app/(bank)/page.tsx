import type { Metadata } from 'next';
import Link from 'next/link';
import type { ReactNode } from 'react';
import { EmptyBank } from '@/app/_components/empty-bank';
import { PageHead } from '@/app/_components/page-head';
import { Sentence } from '@/app/_components/sentence';
import { formatChance, formatDate } from '@/app/_format/figures';
import { dryingPath, lotPath, testPath } from '@/app/_format/links';
import { requestPath } from '@/app/_format/request-path';
import { stockTakePath } from '@/app/_format/stock-take-path';
import { packetPath } from '@/app/_format/store-path';
import { nextSeason } from '@/lib/domain/calendar/season';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getBank } from '@/lib/server/queries/bank';
import { findCareDue } from '@/lib/server/queries/care-due';
import { countLots } from '@/lib/server/queries/collection-size';
import { findGroupsToSet } from '@/lib/server/queries/groups-to-set';
import { findDecisionsWaiting, findFalling, findPromised, findTestsDue } from '@/lib/server/queries/today';
import { countTraysWaiting, findTraysUnderWay } from '@/lib/server/queries/trays-under-way';
import { findUnderWay } from '@/lib/server/queries/under-way';
import { today } from '@/lib/server/today';
import { BenchToday } from './_parts/bench-today';
import { groupToSetInWords } from './germination/_parts/groups-to-set';

export const metadata: Metadata = { title: 'Today' };

/** Germination has all of them. */
const MOST_GROUPS = 5;

const WORK = {
  'stock-take': { word: 'Stock-take', path: stockTakePath },
  drying: { word: 'Drying', path: dryingPath },
  request: { word: 'Request', path: requestPath },
} as const;

export default async function TodayPage() {
  const person = await requirePerson('visitor');
  const day = today();
  const bank = await getBank();
  const [due, falling, waiting, care, underWay, promised, lots, groups] = await Promise.all([
    findTestsDue(),
    findFalling(),
    findDecisionsWaiting(),
    findCareDue(),
    findUnderWay(),
    findPromised(nextSeason(day, bank.sowingMonth)),
    countLots(),
    findGroupsToSet(day),
  ]);
  if (lots === 0) return <EmptyBank />;
  const mayWrite = mayActAs(person, 'volunteer');
  return (
    <>
      <PageHead above={bank.name} title="Today" below={formatDate(day)}>
        {mayWrite && (
          <Link href="/collection/lots/log" className="button main">
            Log a cleaned lot
          </Link>
        )}
      </PageHead>
      <p className="say">
        {inOneSentence({
          toCount: countTraysWaiting().toCount,
          groups: groups.length,
          testsDue: due.total,
          decisions: waiting.total,
          falling: falling.total,
          care: care.total,
        })}
      </p>
      <BenchToday trays={findTraysUnderWay()} today={day} mayCount={mayWrite} />
      {groups.length > 0 && (
        <Section title="Next groups to set" total={groups.length} all="/germination" empty="">
          {groups.slice(0, MOST_GROUPS).map((series) => (
            <Row
              key={series.seriesId}
              href={`${testPath(series.groups.at(-1)?.number ?? '')}#series-title`}
              title={series.lot.accessionName}
              crop={series.lot.cropName}
              number={series.lot.number}
            >
              {groupToSetInWords(series)}
            </Row>
          ))}
        </Section>
      )}
      <Section
        title="Decisions waiting"
        total={waiting.total}
        all="/regrow?action=regrow"
        empty="Every accession that should be regrown has a decision."
      >
        {waiting.rows.map((row) => (
          <Row
            key={row.accessionNumber}
            href={`/regrow/${encodeURIComponent(row.accessionNumber)}`}
            title={row.accessionName}
            crop={row.cropName}
            number={row.accessionNumber}
          >
            <Sentence text={row.sentence} />
            <span className="figures block text-sm text-madder">
              {row.rescue ? 'rescue: sow now' : `sow in ${row.season}`}
            </span>
          </Row>
        ))}
      </Section>
      <Section title="Tests due" total={due.total} all="/germination" empty="No test is due.">
        {due.rows.map((row) => (
          <Row
            key={row.lotNumber}
            href={lotPath(row.lotNumber)}
            title={row.accessionName}
            crop={row.cropName}
            number={row.lotNumber}
          >
            {row.testDueReason}
            <span className="block text-sm text-ochre">
              due {formatDate(row.testDueOn)}
              {row.storeName && <span className="text-ink-2"> · {row.storeName}</span>}
            </span>
          </Row>
        ))}
      </Section>
      <Section
        title="Lots falling"
        total={falling.total}
        all="/collection/lots?sort=-urgency"
        empty="No lot is near its line."
      >
        {falling.rows.map((row) => (
          <Row
            key={row.lotNumber}
            href={lotPath(row.lotNumber)}
            title={row.accessionName}
            crop={row.cropName}
            number={row.lotNumber}
          >
            <Sentence text={row.sentence} />
            <span className="figures block text-sm text-madder">{formatChance(row.chanceBelow)} below the line</span>
          </Row>
        ))}
      </Section>
      {care.total > 0 && (
        <Section title="Packets to see to" total={care.total} all="/stores/packets" empty="">
          {care.rows.map((row) => (
            <Row
              key={`${row.packetNumber} ${row.what}`}
              href={packetPath(row.packetNumber)}
              title={row.accessionName}
              crop={row.cropName}
              number={row.packetNumber}
            >
              {row.what === 'seal' ? 'It was opened and not sealed again.' : 'Its desiccant wants changing.'}
              <span className="block text-sm text-ochre">
                {row.what === 'seal' ? 'open since' : 'due'} {formatDate(row.on)}
                <span className="text-ink-2"> · {row.storeName}</span>
              </span>
            </Row>
          ))}
        </Section>
      )}
      {underWay.length > 0 && (
        <section className="sheet">
          <h2>Under way in the seed room</h2>
          <ul className="mt-2 grid gap-1">
            {underWay.map((work) => (
              <li key={work.number}>
                {WORK[work.kind].word}{' '}
                <Link
                  href={WORK[work.kind].path(work.number)}
                  className="inline-flex min-h-11 items-center text-leaf underline underline-offset-3 sm:min-h-0"
                >
                  <span className="figures">{work.number}</span>
                </Link>{' '}
                {work.about}, <span className="quiet">since {formatDate(work.since)}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {promised.length > 0 && (
        <section className="sheet">
          <h2>Decided for the coming season</h2>
          <ul className="mt-2 grid gap-1">
            {promised.map((row) => (
              <li key={row.accessionNumber}>
                <Link
                  href={`/regrow/${encodeURIComponent(row.accessionNumber)}`}
                  className="text-leaf underline underline-offset-3"
                >
                  {row.accessionName}
                </Link>{' '}
                <span className="figures quiet">{row.accessionNumber}</span>: regrow in {row.season}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

interface Waits {
  toCount: number;
  groups: number;
  testsDue: number;
  decisions: number;
  falling: number;
  care: number;
}

function inOneSentence({ toCount, groups, testsDue, decisions, falling, care }: Waits): string {
  if (toCount + groups + testsDue + decisions + falling + care === 0) {
    return 'Nothing waits today: no test is due and no lot is near its line.';
  }
  const parts = [
    toCount > 0 ? `${toCount} ${toCount === 1 ? 'tray waits' : 'trays wait'} to be counted` : null,
    groups > 0 ? `${groups} ${groups === 1 ? 'test waits' : 'tests wait'} for the next group` : null,
    decisions > 0 ? `${decisions} ${decisions === 1 ? 'accession waits' : 'accessions wait'} for a decision` : null,
    testsDue > 0 ? `${testsDue} ${testsDue === 1 ? 'test is' : 'tests are'} due` : null,
    falling > 0 ? `${falling} ${falling === 1 ? 'lot is' : 'lots are'} falling towards the line or through it` : null,
    care > 0 ? `${care} ${care === 1 ? 'packet wants' : 'packets want'} sealing or a fresh desiccant` : null,
  ].filter((part) => part !== null);
  const last = parts.pop();
  const sentence = parts.length > 0 ? `${parts.join(', ')} and ${last}` : (last as string);
  return `${sentence}.`;
}

interface SectionProps {
  title: string;
  total: number;
  all: string;
  empty: string;
  children: ReactNode[];
}

function Section({ title, total, all, empty, children }: SectionProps) {
  return (
    <section className="sheet p-0!">
      <div className="flex items-baseline justify-between gap-4 border-b border-rule px-5 py-3">
        <h2>
          {title} <span className="figures font-normal text-ink-2">{total}</span>
        </h2>
        {total > children.length && (
          <Link href={all} className="text-leaf underline underline-offset-3">
            See all
          </Link>
        )}
      </div>
      {total === 0 ? <p className="quiet px-5 py-4">{empty}</p> : <ul>{children}</ul>}
    </section>
  );
}

interface RowProps {
  href: string;
  title: string;
  crop: string;
  number: string;
  children: ReactNode;
}

function Row({ href, title, crop, number, children }: RowProps) {
  return (
    <li className="border-b border-rule last:border-0">
      <Link
        href={href}
        className="grid gap-1 px-5 py-3 text-ink no-underline hover:bg-sunk sm:grid-cols-[16rem_1fr] sm:gap-4"
      >
        <span>
          <b>{title}</b> <span className="quiet">{crop}</span>
          <span className="figures block text-sm">{number}</span>
        </span>
        <span>{children}</span>
      </Link>
    </li>
  );
}
