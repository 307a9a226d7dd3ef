/** What the heading of a logger's column says that it holds. */
import { plainWords } from '../spreadsheet/plain-words';
import type { TemperatureUnit } from './logger-layout';

const TEMPERATURE =
  'temp temps temperature temperatures temperatur temperatura celsius fahrenheit c f degc degf tmp'.split(' ');
const HUMIDITY =
  'humidity humid hum rh hr rf rhum feuchte feuchtigkeit luftfeuchte luftfeuchtigkeit humidite humedad umidita'.split(
    ' ',
  );
/** Figures that are neither, though their headings may name one. */
const OTHERS =
  'dew dewpoint point taupunkt rosee rocio battery batt bat volt volts voltage v mv pressure hpa mbar co2 ppm light lux min max minimum maximum alarm high low limit serial index absolute setpoint target heat wet bulb'.split(
    ' ',
  );

/**
 * @param heading  of a column, with its unit if it has a line of its own
 * @returns how well it names each, 0 (not) to 2 (in so many words)
 * Checked in tests/domain/logger/guess-logger.test.ts
 */
export function headingMeans(heading: string): { temperature: number; humidity: number } {
  const words = plainWords(heading).split(' ');
  const has = (list: readonly string[]) => words.some((word) => list.includes(word));
  if (has(OTHERS)) return { temperature: 0, humidity: 0 };
  const long = (list: readonly string[]) => words.some((word) => word.length > 2 && list.includes(word));
  const humidity = has(HUMIDITY) ? 2 : words.includes('percent') ? 1 : 0;
  const temperature = long(TEMPERATURE) ? 2 : has(TEMPERATURE) || words[0] === 't' ? 1 : 0;
  return { temperature: humidity === 2 && temperature < 2 ? 0 : temperature, humidity };
}

/** The unit that a heading or a line of prose names, or null. Checked in tests/domain/logger/guess-logger.test.ts */
export function unitIn(text: string): TemperatureUnit | null {
  const found =
    /(?:°|º|Â°|\uFFFD|\bdeg(?:rees?)?\.?)\s?([CF])\b|[([,;:\s]\s?([CF])\s?[)\]]|\b(celsius|fahrenheit)\b/iu.exec(text);
  if (!found) return null;
  const letter = (found[1] ?? found[2] ?? found[3] ?? '').charAt(0).toUpperCase();
  return letter === 'F' ? 'F' : 'C';
}

const OFFSET = /\b(?:UTC|GMT)\b\s*(?:([+−–-])\s*(\d{1,2})(?::?(\d{2}))?)?/iu;

/**
 * The offset that prose or a heading names: 'Date Time, GMT+01:00', 'times in UTC'.
 *
 * @returns seconds east of UTC, or null
 * Checked in tests/domain/logger/guess-logger.test.ts
 */
export function offsetIn(text: string): number | null {
  const found = OFFSET.exec(text);
  if (!found) return null;
  const [hours, minutes] = [Number(found[2] ?? 0), Number(found[3] ?? 0)];
  if (hours > 14 || minutes > 59) return null;
  return (found[1] && found[1] !== '+' ? -1 : 1) * (hours * 3600 + minutes * 60);
}
