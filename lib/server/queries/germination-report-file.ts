import 'server-only';
import { type CsvCell, csvLine } from '@/lib/domain/spreadsheet/csv-line';
import type { Period } from '@/lib/schemas/germination-report-query';
import { reportTests } from './germination-report';
import { againstBefore, findReportTestIds, type ReportTest } from './report-tests';

const COLUMNS = [
  'test',
  'crop',
  'variety',
  'lot',
  'set on',
  'last count on',
  'method',
  'replicates',
  'seeds set',
  'normal seedlings',
  'germination, %',
  'from, %',
  'to, %',
  'range between replicates, points',
  'tolerated range, points',
  'replicates agree',
  'test before',
  'germination before, %',
  'difference from before, points',
  'agrees with before',
  'seeds taken out of the ledger',
  'taken out on',
  'tested since',
  'judgement of the lot today',
  'chance of being below its line today, %',
  'next test due',
] as const;

/** The first bytes tell spreadsheets that the text is UTF-8. */
const UTF8_MARK = '\ufeff';

/**
 * Every test of the period as a CSV file, piece by piece. Percentages have one decimal; the interval is Wilson's, 95 %.
 *
 * Checked in tests/server/queries/germination-report.test.ts
 */
export async function* germinationReportFile(period: Period): AsyncGenerator<string> {
  yield UTF8_MARK + csvLine(COLUMNS);
  for await (const piece of reportTests(findReportTestIds(period))) {
    yield piece.map((test) => csvLine(cellsOf(test))).join('');
  }
}

function cellsOf(test: ReportTest): CsvCell[] {
  const { agreement, before, takenOut, judged } = test;
  return [
    ...[test.number, test.cropName, test.accessionName, test.lotNumber, test.setOn, test.finishedOn, test.method],
    ...[test.replicates, test.seeds, test.normal],
    ...[inPercent(test.normal / test.seeds), inPercent(test.interval.lower), inPercent(test.interval.upper)],
    ...(agreement ? [oneDecimal(agreement.range), agreement.tolerated, yesOrNo(agreement.within)] : [null, null, null]),
    ...(before
      ? [
          ...[before.number, inPercent(before.normal / before.seeds)],
          ...[
            inPercent(test.normal / test.seeds - before.normal / before.seeds),
            yesOrNo(againstBefore(test)?.compatible !== false),
          ],
        ]
      : [null, null, null, null]),
    ...[takenOut?.seeds ?? null, takenOut?.on ?? null, test.testedSince],
    judged?.action ?? null,
    judged?.chanceBelow == null ? null : inPercent(judged.chanceBelow),
    judged?.testDueOn ?? null,
  ];
}

const oneDecimal = (value: number) => Math.round(value * 10) / 10;
const inPercent = (proportion: number) => oneDecimal(proportion * 100);
const yesOrNo = (yes: boolean) => (yes ? 'yes' : 'no');
