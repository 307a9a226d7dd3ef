import { formatInstant } from '@/app/_format/figures';

/** Seconds since 1970 as '2 Mar 2026, 14:00 UTC'. */
export const instantInWords = (epochSeconds: number): string => formatInstant(new Date(epochSeconds * 1000));

/** A stretch of time: '10 minutes', '5 hours', '12 days'. */
export function stretchInWords(seconds: number): string {
  const [size, unit] =
    seconds < 120
      ? [1, 'second']
      : seconds < 7200
        ? [60, 'minute']
        : seconds < 172_800
          ? [3600, 'hour']
          : [86_400, 'day'];
  const count = Math.round((10 * seconds) / size) / 10;
  return `${count} ${unit}${count === 1 ? '' : 's'}`;
}
