import { Notice } from '@/app/_components/notice';
import type { ViabilityKind } from '@/lib/domain/germination/dormancy/viability-kinds';
import { type Caution, cautionsFor } from '@/lib/domain/reference/cautions';

/** What is read before the work begins; the rest is a touch away. */
const FIRST: Record<ViabilityKind, readonly string[]> = {
  tetrazolium: ['tetrazolium', 'viability-sample-is-spent'],
  cut: ['blades', 'viability-sample-is-spent'],
};
/** A cut needs a blade, but no chemicals. */
const ONLY_TETRAZOLIUM = ['laboratory-chemicals', 'tetrazolium'];

/** The cautions of staining or cutting, each with how it is known. */
export function WorkCautions({ kind }: { kind: ViabilityKind }) {
  const all = cautionsFor('viability test').filter(
    ({ key }) => kind === 'tetrazolium' || !ONLY_TETRAZOLIUM.includes(key),
  );
  const first = all.filter(({ key }) => FIRST[kind].includes(key));
  const rest = all.filter(({ key }) => !FIRST[kind].includes(key));
  return (
    <Notice kind="caution">
      {first.map((caution) => (
        <Line key={caution.key} caution={caution} />
      ))}
      <details>
        <summary className="min-h-11 cursor-pointer py-2.5 font-semibold">
          {kind === 'tetrazolium' ? 'Blades, softening, local rules' : 'Softening, local rules'}
        </summary>
        {rest.map((caution) => (
          <Line key={caution.key} caution={caution} />
        ))}
      </details>
    </Notice>
  );
}

function Line({ caution: { text, mark } }: { caution: Caution }) {
  return (
    <p className="max-w-prose [&+p]:mt-2">
      {text} <span className="label">({mark})</span>
    </p>
  );
}
