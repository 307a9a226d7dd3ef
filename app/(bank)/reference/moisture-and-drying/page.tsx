import type { Metadata } from 'next';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import { QuestionPart } from '../_parts/question-part';
import type { Address } from '../_parts/read-question';
import { AirSection } from './_parts/air-section';
import { BasisSection } from './_parts/basis-section';
import { OvenSection } from './_parts/oven-section';
import { ProgressSection } from './_parts/progress-section';
import { ReachSection } from './_parts/reach-section';
import { TargetSection } from './_parts/target-section';

const SLUG = 'moisture-and-drying';

const SECTIONS = [
  { id: 'reach', title: 'What this air brings seed to', Section: ReachSection },
  { id: 'air', title: 'What air is needed', Section: AirSection },
  { id: 'target', title: 'What dry seed weighs', Section: TargetSection },
  { id: 'progress', title: 'How drying goes on', Section: ProgressSection },
  { id: 'oven', title: 'Oven test', Section: OvenSection },
  { id: 'basis', title: 'Of fresh or of dry weight', Section: BasisSection },
] as const;

export const metadata: Metadata = { title: 'Moisture and drying' };

export default async function MoistureAndDryingPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const address = await searchParams;
  return (
    <CalculatorPage slug={SLUG}>
      <nav aria-label="On this page" className="no-print flex flex-wrap gap-2">
        {SECTIONS.map(({ id, title }) => (
          <a key={id} href={`#${id}`} className="button">
            {title}
          </a>
        ))}
      </nav>
      {SECTIONS.map(({ id, title, Section }) => (
        <QuestionPart key={id} id={id} title={title}>
          <Section action={`/reference/${SLUG}#${id}`} address={address} />
        </QuestionPart>
      ))}
    </CalculatorPage>
  );
}
