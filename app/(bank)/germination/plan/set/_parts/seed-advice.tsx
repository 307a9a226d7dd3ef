import { prechillAdvice } from '@/lib/domain/germination/plan/fresh-seed-advice';
import type { TrayToPlan } from '@/lib/server/queries/trays-to-set';

/** What the method says of preparing the seed, and what to expect of hard and fresh seed. Nothing where there is nothing. */
export function SeedAdvice({ lot }: { lot: TrayToPlan }) {
  const methods = lot.crop.methods;
  const said = [...new Set(methods.flatMap(({ preTreatment }) => preTreatment ?? []))];
  const hard = methods.some(({ hardSeedOccurs }) => hardSeedOccurs);
  const advice = prechillAdvice(methods[0]?.preTreatment ?? null);
  const lines = [
    ...(advice?.when === 'fresh' && lot.freshSeedExpected
      ? [
          `Fresh (dormant) seed is likely: ${lot.lastTestedOn ? 'the last test found some' : 'it is young'}. ${advice.days} days moist and cold first are filled in below.`,
        ]
      : []),
    ...(advice?.when === 'always' ? [`${advice.days} days moist and cold first are filled in below.`] : []),
    ...(hard
      ? [
          'Hard seed may be left over: it takes up no water. Scratch or nick some (scarify) at the last count to see whether it lives.',
        ]
      : []),
    ...said.map((words) => `The method says: ${words}`),
  ];
  if (lines.length === 0) return null;
  return (
    <ul className="grid list-disc gap-1 pl-5 text-sm text-ink-2">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
