import clsx from 'clsx';
import { Activity, Target } from 'lucide-react';
import { climateSourceWords } from '@/app/_format/climate-source-words';
import type { ClimateSource } from '@/lib/server/queries/climate-source';

/** Whether a store's climate was measured or is only meant: a shape and words. */
export function ClimateMark({ source }: { source: ClimateSource }) {
  const isMeasured = source.kind === 'logged' && !source.stopped;
  const Icon = isMeasured ? Activity : Target;
  return (
    <span className={clsx('inline-flex items-baseline gap-1.5', !isMeasured && 'text-ochre')}>
      <Icon aria-hidden size={14} className="shrink-0 translate-y-0.5" />
      <span>{climateSourceWords(source)}</span>
    </span>
  );
}
