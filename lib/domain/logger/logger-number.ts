/**
 * A number in a logger's cell. Temperatures and humidities have no thousands, so that point and comma are both decimal
 * marks and nothing is ambiguous (number-format.ts is for sheets where it is).
 */
import type { TemperatureUnit } from './logger-layout';

/** What a number reader fills in. */
export interface LoggerNumber {
  value: number;
  /** written behind the number; null when nothing is, or a percent sign */
  unit: TemperatureUnit | null;
  /** a percent sign stands behind it */
  percent: boolean;
  /** digits behind the decimal mark */
  decimals: number;
}

const POWERS = Float64Array.from({ length: 16 }, (_, power) => 10 ** power);
const MOST_DIGITS = 15;
const UNIT = /^(?:(°|º|Â°|\uFFFD|deg\.?)?\s?([cf])|celsius|fahrenheit|%\s?(?:r\.?h\.?|r\.?f\.?|h\.?r\.?)?|r\.?h\.?)$/i;

/**
 * Reads a number with its unit.
 *
 * @param text, from, to  where it stands: [from, to)
 * @param into  filled when the answer is true
 * @returns false for blanks, words, dashes and whatever else is no number: 'Err', '---', 'NaN'
 * Checked in tests/domain/logger/logger-number.test.ts
 */
export function readLoggerNumber(text: string, from: number, to: number, into: LoggerNumber): boolean {
  let at = from;
  while (at < to && isSpace(text.charCodeAt(at))) at += 1;
  let sign = 1;
  const first = text.charCodeAt(at);
  if (first === 45 || first === 0x2212 || first === 0x2013) {
    sign = -1;
    at += 1;
  } else if (first === 43) at += 1;
  let mantissa = 0;
  let digits = 0;
  let decimals = -1;
  for (; at < to; at += 1) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code <= 57) {
      mantissa = mantissa * 10 + (code - 48);
      digits += 1;
      if (decimals >= 0) decimals += 1;
    } else if ((code === 46 || code === 44) && decimals < 0) decimals = 0;
    else break;
  }
  if (digits === 0 || digits > MOST_DIGITS) return false;
  into.decimals = Math.max(0, decimals);
  // Both are exact, so the quotient is the double nearest to what was written, as Number() would give.
  into.value = (sign * mantissa) / (POWERS[into.decimals] as number) + 0;
  into.unit = null;
  into.percent = false;
  while (at < to && isSpace(text.charCodeAt(at))) at += 1;
  return at >= to || readUnit(text.slice(at, to).trim(), into);
}

function readUnit(written: string, into: LoggerNumber): boolean {
  const unit = UNIT.exec(written);
  if (!unit) return false;
  const letter = unit[2]?.toUpperCase() ?? { celsius: 'C', fahrenheit: 'F' }[written.toLowerCase()];
  if (letter === 'C' || letter === 'F') into.unit = letter;
  else into.percent = true;
  return true;
}

const isSpace = (code: number) => code === 32 || code === 0xa0 || code === 9 || code === 0x202f;
