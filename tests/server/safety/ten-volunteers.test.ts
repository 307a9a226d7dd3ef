import { expect, it } from 'vitest';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { closeConnections, connections } from '@/lib/server/database/connections';
import { countRows } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { VOLUNTEER } from '@/tests/support/people';
import { useBundledChild } from '@/tests/support/safety/bundle-child';
import { startChild } from '@/tests/support/safety/child';
import { useTestBank } from '@/tests/support/test-bank';

const bank = useTestBank({ fresh: 'each' });
const program = useBundledChild('take-in-child.ts');

/** 1480 seeds are asked for; 1000 are there. */
const WANTED = [300, 250, 40, 310, 90, 120, 60, 200, 35, 75];
const TOLD = /^This packet holds (about |at most |)\d+ seeds/;

interface Answer {
  wanted: number;
  granted: boolean;
  told: string;
}

/** What was granted went out and nothing else; whoever was refused was told how much there was, and that was too little. */
function expectFairShares(answers: Answer[], packetId: string): void {
  const ledger = connections()
    .bulk.prepare<[string], { seeds: number; reason: string }>(
      `SELECT "seeds", "reason" FROM "Movement" WHERE "packetId" = ? ORDER BY "rowid"`,
    )
    .all(packetId);
  const granted = answers.filter((answer) => answer.granted).map(({ wanted }) => wanted);
  const inOrder = (numbers: number[]) => [...numbers].sort((one, other) => one - other);
  expect(inOrder(ledger.filter(({ reason }) => reason === 'sowing').map(({ seeds }) => -seeds))).toEqual(
    inOrder(granted),
  );
  const left = ledger.reduce((sum, { seeds }) => sum + seeds, 0);
  expect(left).toBe(1000 - granted.reduce((sum, seeds) => sum + seeds, 0));
  expect(left).toBeGreaterThanOrEqual(0);
  const refused = answers.filter((answer) => !answer.granted);
  expect(refused.length).toBeGreaterThan(0);
  for (const { wanted, told } of refused) {
    expect(told).toMatch(TOLD);
    // Nothing comes back, so whoever was refused would be refused now.
    expect(wanted).toBeGreaterThan(left);
    expect(wanted).toBeGreaterThan(Number(/\d+/.exec(told)?.[0]));
  }
  expect(countRows('AuditEntry')).toBe(entriesBefore + granted.length);
}

let entriesBefore = 0;
async function packetOfThousand(): Promise<string> {
  const { packetId } = await makeLot({ seedCount: '1000' });
  entriesBefore = countRows('AuditEntry');
  return packetId;
}

it('never overdraws a packet when ten people at one server take from it at once', async () => {
  const packetId = await packetOfThousand();
  const answers = await Promise.all(
    WANTED.map((wanted) =>
      takeSeedOut(VOLUNTEER, { packetId, amount: String(wanted), unit: 'seeds', reason: 'sowing' }).then(
        () => ({ wanted, granted: true, told: '' }),
        (error) => ({ wanted, granted: false, told: error.fieldErrors?.amount ?? String(error) }),
      ),
    ),
  );
  expectFairShares(answers, packetId);
});

it('never overdraws it when ten programs take from it at once', { timeout: 120_000 }, async () => {
  const packetId = await packetOfThousand();
  await closeConnections();
  const children = WANTED.map((wanted) => ({
    wanted,
    child: startChild(program.file, { dataDirectory: bank.directory, args: [packetId, String(wanted)] }),
  }));
  await Promise.all(children.map(({ child }) => child.until(({ word }) => word === 'ready')));
  for (const { child } of children) child.go();
  const answers = await Promise.all(
    children.map(async ({ wanted, child }) => {
      const { word, rest } = await child.until((line) => line.word === 'ack' || line.word === 'refused');
      await child.ended();
      return { wanted, granted: word === 'ack', told: rest };
    }),
  );
  expectFairShares(answers, packetId);
});
