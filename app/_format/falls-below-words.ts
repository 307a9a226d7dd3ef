import { formatPercentFigure } from './figures';

/** Years in which the lot has fallen below with these chances; 'passed' is today or before, null beyond 200 years. */
export interface FallsBelow {
  threshold: number;
  /** 5 %, half, 95 % */
  earliest: number | 'passed' | null;
  median: number | 'passed' | null;
  latest: number | 'passed' | null;
}

const HORIZON = '200 years';

/** When a lot falls below its line, as one plain sentence; what stands between ** is set in bold. */
export function fallsBelowWords({ threshold, earliest, median, latest }: FallsBelow): string {
  const line = `the line of ${formatPercentFigure(threshold)} %`;
  if (latest === 'passed') return `All but surely (19 in 20) it has fallen below ${line} already.`;
  if (earliest === null) return `In this store it is all but sure (19 in 20) to stay above ${line} for ${HORIZON}.`;
  const end = latest === null ? `it may also stay above it for more than ${HORIZON}` : null;
  if (median === 'passed') {
    return `More likely than not it has fallen below ${line} already; ${end ?? `all but surely (19 in 20) it will have by **${latest}**`}.`;
  }
  if (earliest === 'passed') {
    const half = median === null ? 'more likely not within 200 years' : `as likely before **${median}** as after`;
    return `It may have fallen below ${line} already; ${half}${latest === null ? '' : `, and all but surely (19 in 20) by ${latest}`}.`;
  }
  if (median === null) {
    return `It falls below ${line} hardly before **${earliest}** (1 in 20), and more likely than not stays above it for ${HORIZON}.`;
  }
  const half = `as likely before **${median}** as after`;
  if (latest === null) return `It falls below ${line} hardly before **${earliest}** (1 in 20), ${half}; ${end}.`;
  if (earliest === latest) return `It falls below ${line} in **${latest}**, nine times in ten.`;
  return `It falls below ${line} between **${earliest} and ${latest}**, nine times in ten; ${half}.`;
}
