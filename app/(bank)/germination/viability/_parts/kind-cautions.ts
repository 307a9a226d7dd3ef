import type { ViabilityKind } from '@/lib/domain/germination/dormancy/viability-kinds';
import { cautionsFor } from '@/lib/domain/reference/cautions';

/** Cautions of the work, in the order of the list: a cut needs a blade, but no chemicals. */
const ONLY_TETRAZOLIUM = ['laboratory-chemicals', 'tetrazolium'];

export const cautionKeys = (kind: ViabilityKind): string[] =>
  cautionsFor('viability test')
    .map(({ key }) => key)
    .filter((key) => kind === 'tetrazolium' || !ONLY_TETRAZOLIUM.includes(key));
