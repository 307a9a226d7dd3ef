import type { Metadata } from 'next';
import { groupsQuestion, oneTestQuestion, widthQuestion } from '@/lib/schemas/calculators/seeds-to-test';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getLotToTest } from '@/lib/server/queries/lot-to-test';
import { CalculatorPage } from '../_parts/calculator-page';
import { type Address, readQuestion } from '../_parts/read-question';
import { Groups } from './_parts/groups';
import { groupsExample, LotAsked } from './_parts/lot-asked';
import { Method } from './_parts/method';
import { OneTest } from './_parts/one-test';
import { Width } from './_parts/width';

const ONE_TEST_EXAMPLE = { threshold: '85', truly: '95', wrongAbove: '5', missed: '10' };
const WIDTH_EXAMPLE = { expected: '85', within: '5', level: '95', method: 'wilson', basis: 'expected' };

export const metadata: Metadata = { title: 'Seeds to test' };

export default async function SeedsToTestPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const address = await searchParams;
  const lotNumber = Array.isArray(address.lot) ? address.lot[0] : address.lot;
  const lot = lotNumber ? await getLotToTest(lotNumber) : null;
  const groups = readQuestion(groupsQuestion, address, groupsExample(lot));
  return (
    <CalculatorPage slug="seeds-to-test">
      {lot && <LotAsked lot={lot} />}
      <Groups question={lot ? { ...groups, isExample: false } : groups} />
      <OneTest question={readQuestion(oneTestQuestion, address, ONE_TEST_EXAMPLE)} />
      <Width question={readQuestion(widthQuestion, address, WIDTH_EXAMPLE)} />
      <Method />
    </CalculatorPage>
  );
}
