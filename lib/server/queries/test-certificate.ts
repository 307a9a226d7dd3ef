import 'server-only';
import { reader } from '../database/connections';
import { selectCount, writtenCount } from '../trays/count-row';
import { type GerminationTestDetail, getGerminationTest } from './germination-test-detail';

/** What stands on the certificate of a finished test, for use inside the bank. */
export interface TestCertificate {
  bankName: string;
  test: GerminationTestDetail;
  /** who counted the tray; for a test written down by hand, who wrote it */
  countedBy: string[];
  /** it was written down by hand: who counted is not known, only who wrote */
  writtenByHand: boolean;
}

/**
 * The certificate of one finished test.
 *
 * @returns null where there is no such test: a tray under way has none
 * Checked in tests/server/queries/test-certificate.test.ts
 */
export async function getTestCertificate(number: string): Promise<TestCertificate | null> {
  const test = await getGerminationTest(number);
  if (!test) return null;
  const [bank, counts, first] = await Promise.all([
    reader().bank.findFirstOrThrow({ select: { name: true } }),
    test.tray
      ? reader().trayCount.findMany({ where: { trayId: test.tray.id }, select: selectCount, orderBy: { id: 'asc' } })
      : [],
    reader().auditEntry.findFirst({
      where: { entity: 'germination test', entityId: test.id },
      orderBy: { id: 'asc' },
      select: { byName: true },
    }),
  ]);
  const counters = [...new Set(counts.map((row) => writtenCount(row).byName))];
  return {
    bankName: bank.name,
    test,
    countedBy: test.tray ? counters : first ? [first.byName] : [],
    writtenByHand: test.tray === null,
  };
}
