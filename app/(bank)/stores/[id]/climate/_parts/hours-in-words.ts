import { formatCount } from '@/app/_format/figures';

/** '20 min', '5 h', '41 days': hours up to three days, then days. */
export function hoursInWords(hours: number): string {
  if (hours === 0) return '0 h';
  if (hours < 1) return `${Math.max(1, Math.round(hours * 60))} min`;
  if (hours < 72) return `${Math.round(hours)} h`;
  return `${formatCount(hours / 24)} days`;
}
