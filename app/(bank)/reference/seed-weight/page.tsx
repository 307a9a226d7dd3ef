import type { Metadata } from 'next';
import { gramsSchema, packetSchema, seedWeightSchema } from '@/lib/schemas/calculators/seed-weight';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import { QuestionPart } from '../_parts/question-part';
import { type Address, readQuestion } from '../_parts/read-question';
import { GramsSection } from './_parts/grams-section';
import { PacketSection } from './_parts/packet-section';
import { ThousandSection } from './_parts/thousand-section';

const SLUG = 'seed-weight';

// Published: eight replicates of 100 seeds of Dimorphotheca, http://www.frsa.org/SAfacts/App4tutorial.html
const WEIGHTS_EXAMPLE = {
  weights: '0.2224 0.2134 0.2130 0.2116 0.2145 0.2071 0.2116 0.2125',
  perReplicate: '100',
  weightStep: '0.0001',
  surface: 'ordinary',
};
const PACKET_EXAMPLE = { packetGrams: '5', packetStep: '0.01', packetLevel: '95' };
const GRAMS_EXAMPLE = { seedsWanted: '1000', gramsStep: '0.01', gramsAssurance: '95' };

export const metadata: Metadata = { title: 'Seed weight and number' };

export default async function SeedWeightPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const address = await searchParams;
  const weighed = readQuestion(seedWeightSchema, address, WEIGHTS_EXAMPLE);
  const packet = readQuestion(packetSchema, address, PACKET_EXAMPLE);
  const grams = readQuestion(gramsSchema, address, GRAMS_EXAMPLE);
  const sample = weighed.input && {
    weightsG: weighed.input.weights,
    seedsPerReplicate: weighed.input.perReplicate,
    stepG: weighed.input.weightStep,
  };
  return (
    <CalculatorPage slug={SLUG}>
      <QuestionPart id="thousand" title="Thousand-seed weight">
        <ThousandSection action={`/reference/${SLUG}#thousand`} question={weighed} />
      </QuestionPart>
      <QuestionPart id="packet" title="Seeds in a packet">
        <PacketSection action={`/reference/${SLUG}#packet`} question={packet} sample={sample} />
      </QuestionPart>
      <QuestionPart id="grams" title="Grams to weigh out">
        <GramsSection action={`/reference/${SLUG}#grams`} question={grams} sample={sample} />
      </QuestionPart>
    </CalculatorPage>
  );
}
