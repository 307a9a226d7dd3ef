import { formatChance } from '@/app/_format/figures';

/** A chance as a bar and in words: '69 in 100'. The colour only repeats what the length and the words say. */
export function ChanceBar({ chance, action }: { chance: number; action: string }) {
  const tone = action === 'regrow' ? 'bg-madder' : action === 'test-first' ? 'bg-ochre' : 'bg-leaf';
  return (
    <div className="min-w-28">
      <div aria-hidden className="h-2.5 border border-rule bg-sunk">
        <div className={`h-full ${tone}`} style={{ width: `${Math.max(chance * 100, chance > 0.005 ? 1 : 0)}%` }} />
      </div>
      <span className="figures text-sm whitespace-nowrap">{formatChance(chance)}</span>
    </div>
  );
}
