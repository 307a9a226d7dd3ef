import type { Metadata } from 'next';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import type { Address } from '../_parts/read-question';
import { Cut } from './_parts/cut';
import { Method } from './_parts/method';
import { SideSamples } from './_parts/side-samples';
import { Tetrazolium } from './_parts/tetrazolium';
import { TreatedSample } from './_parts/treated-sample';

const SLUG = 'hard-and-dormant-seed';
const PATH = `/reference/${SLUG}`;

export const metadata: Metadata = { title: 'Hard and dormant seed' };

export default async function HardAndDormantSeedPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const address = await searchParams;
  return (
    <CalculatorPage slug={SLUG}>
      <SideSamples action={`${PATH}#side-samples`} address={address} />
      <TreatedSample action={`${PATH}#treated`} address={address} />
      <Tetrazolium action={`${PATH}#tetrazolium`} address={address} />
      <Cut action={`${PATH}#cut`} address={address} />
      <Method />
    </CalculatorPage>
  );
}
