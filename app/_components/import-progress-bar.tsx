'use client';

import { useEffect, useState } from 'react';
import { formatPercentFigure } from '@/app/_format/figures';
import { useFormState } from './form/form';

interface Progress {
  phase: 'checking' | 'writing' | 'judging';
  done: number;
  total: number;
}

const PHASES = { checking: 'checking the rows', writing: 'writing', judging: 'judging the lots' } as const;
const ASK_EVERY_MS = 400;

interface Props {
  /** where the import says how far it is */
  address: string;
}

/** While an import is under way: how far it is. */
export function ImportProgressBar({ address }: Props) {
  const { pending } = useFormState();
  const [progress, setProgress] = useState<Progress | null>(null);
  useEffect(() => {
    if (!pending) return;
    const ask = async () => {
      const answer = await fetch(address).catch(() => null);
      if (answer?.ok) setProgress((await answer.json()).progress);
    };
    const timer = setInterval(() => void ask(), ASK_EVERY_MS);
    return () => clearInterval(timer);
  }, [pending, address]);
  if (!pending || !progress) return null;
  return (
    <p role="status" className="flex items-center gap-3">
      <progress
        value={progress.done}
        max={Math.max(1, progress.total)}
        className="h-3 w-40 accent-leaf"
        aria-label="Import"
      />
      <span className="figures text-sm">
        {PHASES[progress.phase]}: {formatPercentFigure(progress.done / Math.max(1, progress.total))} %
      </span>
    </p>
  );
}
