import Link from 'next/link';
import { formatCount } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import type { LotToTest } from '@/lib/server/queries/lot-to-test';

const USUAL = { line: 85, points: 5, most: 400, group: 40 };
/** Of the room between the line and all or nothing; a lot cannot be told from more than everything. */
const SHARE_OF_ROOM = 0.6;

/** What stands in the form on groups until something else is asked: the lot's own line and seeds, or the usual ones. */
export function groupsExample(lot: LotToTest | null) {
  const line = lot?.threshold ? Math.round(lot.threshold * 1000) / 10 : USUAL.line;
  const points = Math.min(USUAL.points, Math.floor((100 - line) * SHARE_OF_ROOM * 10) / 10);
  const most = lot ? Math.min(USUAL.most, spareSeeds(lot) > 0 ? spareSeeds(lot) : lot.seedsLeft) : USUAL.most;
  return {
    line: String(line),
    points: String(points),
    wrongKeep: '5',
    wrongRegrow: '5',
    group: String(USUAL.group),
    most: String(most),
  };
}

const spareSeeds = (lot: LotToTest) => lot.seedsLeft - (lot.seedsNeeded ?? 0);

/** Which lot the plan is for, and what it can spare. */
export function LotAsked({ lot }: { lot: LotToTest }) {
  return (
    <p className="sheet">
      For <b>{lot.accessionName}</b> <span className="quiet">{lot.cropName}</span>, lot{' '}
      <Link href={lotPath(lot.number)} className="figures">
        {lot.number}
      </Link>
      : {formatCount(lot.seedsLeft)} seeds left
      {lot.seedsNeeded !== null && `, of which regrowing it takes ${formatCount(lot.seedsNeeded)}`}.
      {lot.seedsNeeded !== null && spareSeeds(lot) <= 0 && ' Every seed tested is missing there.'}
      {lot.threshold !== null &&
        ' Its line is one of viability: count fresh and hard seed shown to be alive as germinated.'}
      {lot.threshold === null && ' Its line is not known; 85 % is filled in.'}
    </p>
  );
}
