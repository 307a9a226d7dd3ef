import type { LabelLayout } from '@/lib/domain/labels/layout-label';

/** Why a label cannot be printed, and what to do. */
export function refusalWords({
  called,
  problem,
}: {
  called: string;
  problem: Extract<LabelLayout, { ok: false }>;
}): string {
  if (problem.reason === 'text-too-long') {
    return `The name, the numbers and the cautions of ${called} do not fit on these labels in letters that can be read. Choose larger labels, or a Data Matrix.`;
  }
  const [needed, room] = [problem.neededMm, problem.roomMm].map((mm) => mm.toFixed(1));
  return `The code of ${called} needs ${needed} mm to be printed so that it can be read, but these labels have ${room} mm for it. Choose larger labels, or a Data Matrix.`;
}
