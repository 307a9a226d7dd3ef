import Link from 'next/link';
import { Caption } from '@/app/_components/caption';
import { Facts } from '@/app/_components/facts';
import { History } from '@/app/_components/history';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatDate, formatInstant } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import { countsInWords } from '@/lib/domain/germination/bench/counts-in-words';
import type { DishState } from '@/lib/domain/germination/bench/dish-state';
import { oneAfterTheOther } from '@/lib/domain/germination/bench/one-after-the-other';
import type { TrayPage } from '@/lib/server/queries/tray-page';
import type { WrittenCount } from '@/lib/server/trays/count-row';
import { seenCounts } from '@/lib/server/trays/seen-counts';
import { TreatedSeed } from '../../_parts/bench-advice';
import { Dish } from '../../_parts/dish';
import { Closing, GiveUpForm, ReopenForm } from './closing';
import { CountTable } from './count-table';
import { PlannedCounts } from './planned-counts';
import { Remarks } from './remarks';
import { SeriesPart } from './series-part';
import { type Disagreement, SettleForm } from './settle-form';
import { TimeCoursePart } from './time-course-part';
import { soFarInWords } from './tray-words';

interface Props {
  tray: TrayPage;
  mayWrite: boolean;
}

/** A tray: what was counted in it, what is still to come, and what stands between it and its result. */
export function TrayView({ tray, mayWrite }: Props) {
  const isOpen = tray.status === 'open';
  return (
    <>
      <PageHead
        above={
          <>
            {tray.crop.name} · <i>{tray.crop.scientificName}</i> · lot{' '}
            <Link href={lotPath(tray.lot.number)} className="figures text-ink underline underline-offset-3">
              {tray.lot.number}
            </Link>
          </>
        }
        title={
          <>
            {tray.lot.accessionName} <span className="figures font-medium">{tray.number}</span>
          </>
        }
        below={`Tray of a germination test, set ${formatDate(tray.setOn)}; ${STATUS_WORDS[tray.status]}`}
      />
      <Standing tray={tray} />
      {mayWrite && isOpen && disagreementsOf(tray).map((one) => <SettleForm key={one.version} disagreement={one} />)}
      {mayWrite && isOpen && <Closing tray={tray} />}
      <section className="sheet grid gap-4" aria-labelledby="dishes-title">
        <h2 id="dishes-title">Dishes</h2>
        <Caption text={soFarInWords(tray.states)} />
        <ul className="grid grid-cols-2 gap-4 sm:grid-cols-4">
          {tray.states.map((state) => (
            <DishShown key={state.dish.id} state={state} />
          ))}
        </ul>
        <CountTable tray={tray} mayWrite={mayWrite && isOpen} />
      </section>
      <TimeCoursePart
        course={tray.course}
        unseen={tray.states.flatMap(({ dish, days }) => (days.length === 0 ? [dish.position] : []))}
        prechillDays={tray.prechillDays}
        soFar={isOpen}
      />
      <div className="grid items-start gap-6 lg:grid-cols-2">
        <section className="grid gap-3" aria-labelledby="done-title">
          <h2 id="done-title">As it is done</h2>
          <Facts
            facts={[
              ['Method', tray.method],
              ['Place', tray.place],
              ['Packet', tray.packet && <span className="figures">{tray.packet.number}</span>],
              ['Notes', tray.notes && <span className="font-normal whitespace-pre-line">{tray.notes}</span>],
            ]}
          />
          {tray.lot.treatment && <TreatedSeed treatment={tray.lot.treatment} />}
        </section>
        <PlannedCounts plan={tray.plan} />
      </div>
      <Remarks remarks={tray.remarks} />
      <SeriesPart seriesId={tray.seriesId} mayWrite={mayWrite} />
      {mayWrite && isOpen && tray.test === null && <GiveUpForm trayId={tray.id} />}
      {mayWrite && tray.status === 'closed' && <ReopenForm tray={tray} open={tray.late.length > 0} />}
      <History lines={tray.history} />
    </>
  );
}

const STATUS_WORDS = { open: 'under way', closed: 'closed', 'given-up': 'given up' } as const;

/** What its status means for the result. */
function Standing({ tray }: { tray: TrayPage }) {
  const { status, test, late } = tray;
  if (status === 'given-up') {
    return <Notice kind="caution">This tray was given up: it says nothing of the lot. The reason stands below.</Notice>;
  }
  if (status === 'open') {
    if (!test) return null;
    return (
      <Notice kind="caution">
        <b>This tray is open again.</b> <TestLink number={test.number} /> speaks for the lot until it is closed again.
      </Notice>
    );
  }
  if (!test) return null;
  return (
    <Notice kind={late.length > 0 ? 'caution' : 'note'}>
      {late.length > 0 ? (
        <>
          <b>{late.length === 1 ? 'A count came' : `${late.length} counts came`} after it was closed</b> and{' '}
          {late.length === 1 ? 'is' : 'are'} not in <TestLink number={test.number} />. Open the tray again to take{' '}
          {late.length === 1 ? 'it' : 'them'} in:
          <ul className="mt-1 list-disc pl-5">
            {late.map((count) => (
              <li key={count.id}>{lateInWords(count, tray)}</li>
            ))}
          </ul>
        </>
      ) : (
        <>
          Its counts are in <TestLink number={test.number} />.
        </>
      )}
    </Notice>
  );
}

function lateInWords({ dishId, on, byName, found, receivedAt }: WrittenCount, { states }: TrayPage): string {
  const position = states.find(({ dish }) => dish.id === dishId)?.dish.position;
  return `dish ${position}, ${formatDate(on)}: ${byName} ${countsInWords(found)}; received ${formatInstant(receivedAt)}`;
}

function TestLink({ number }: { number: string }) {
  return (
    <Link href={testPath(number)} className="figures text-ink underline underline-offset-3">
      {number}
    </Link>
  );
}

function DishShown({ state }: { state: DishState }) {
  const { dish, totals, remaining } = state;
  return (
    <li className="grid justify-items-center gap-1">
      <Dish
        seeds={dish.seeds}
        counts={totals}
        label={`Dish ${dish.position}: ${totals.normal} normal of ${dish.seeds} seeds, ${Math.max(0, remaining)} left`}
        className="w-full max-w-44"
      />
      <span className="text-sm">
        <span className="quiet">{dish.position}:</span>{' '}
        <span className="figures">
          {totals.normal} of {dish.seeds}
        </span>
        {remaining > 0 && <span className="quiet">, {remaining} left</span>}
      </span>
    </li>
  );
}

function disagreementsOf({ id, states }: TrayPage): Disagreement[] {
  return states.flatMap(({ dish, disagreements }) =>
    disagreements.map((day) => ({
      trayId: id,
      dishId: dish.id,
      position: dish.position,
      on: day.on,
      onInWords: formatDate(day.on),
      version: seenCounts([day]),
      counts: day.standing.map(({ id: countId, byName, found, madeAt }) => ({
        ...{ id: countId, byName, inWords: countsInWords(found), sentInWords: formatInstant(madeAt) },
      })),
      together: countsInWords(oneAfterTheOther(day.standing)),
    })),
  );
}
