import { formatCount } from '@/app/_format/figures';

interface Props {
  total: number;
  seedsIn: number;
  seedsOut: number;
}

/** What the lines found add up to, on all pages. */
export function LedgerSums({ total, seedsIn, seedsOut }: Props) {
  return (
    <p className="say">
      {formatCount(total)} {total === 1 ? 'line' : 'lines'}: <b>{formatCount(seedsIn)}</b> seeds in,{' '}
      <b>{formatCount(seedsOut)}</b> out.
    </p>
  );
}
