import { formatPercent, formatPercentFigure } from '@/app/_format/figures';

interface Props {
  median: number | null;
  lower: number | null;
  upper: number | null;
}

/** The forecast share alive now, with its nine-in-ten range: '74 % 64–82'. */
export function Viability({ median, lower, upper }: Props) {
  if (median === null) return <span className="quiet">no forecast</span>;
  return (
    <span className="whitespace-nowrap">
      {formatPercent(median)}
      {lower !== null && upper !== null && (
        <span className="quiet text-sm">
          {' '}
          {formatPercentFigure(lower)}–{formatPercentFigure(upper)}
        </span>
      )}
    </span>
  );
}
