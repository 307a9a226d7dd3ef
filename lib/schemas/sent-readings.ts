/**
 * Readings as a script sends them: JSON, or CSV with the same three names as headings. Instants in ISO 8601 with an
 * offset, so that nothing is left to a zone; degrees C and percent.
 */
import { z } from 'zod';
import {
  EARLIEST_INSTANT,
  POSSIBLE_HUMIDITY_PERCENT,
  POSSIBLE_TEMPERATURE_C,
} from '../domain/logger/impossible-values';

export const MAX_SENT_BYTES = 4 * 1024 * 1024;
export const MAX_SENT_READINGS = 20_000;
export const SENT_COLUMNS = ['at', 'temperatureC', 'humidityPercent'] as const;

const INSTANT = /^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?(?:Z|[+-]\d{2}:?\d{2})$/;

const number = (name: string, { min, max }: { min: number; max: number }) =>
  z
    .number({ error: `${name} must be a number.` })
    .min(min, `${name} must be ${min} to ${max}.`)
    .max(max, `${name} must be ${min} to ${max}.`);

/**
 * One reading, before the future is refused.
 *
 * @param latestInstant  seconds since 1970 UTC
 */
function sentReading(latestInstant: number) {
  return z.object({
    at: z
      .string({ error: "at must be text such as '2026-11-25T14:00:00Z'." })
      .regex(
        INSTANT,
        "at must be a date and time with an offset, such as '2026-11-25T14:00:00Z' or '2026-11-25T15:00+01:00'.",
      )
      .transform((text, context) => {
        const at = Math.floor(Date.parse(text.replace(' ', 'T')) / 1000);
        const problem = Number.isNaN(at)
          ? 'The calendar has no such moment.'
          : at > latestInstant
            ? 'at lies in the future.'
            : at < EARLIEST_INSTANT
              ? 'at lies before 1985.'
              : null;
        if (problem === null) return at;
        context.addIssue({ code: 'custom', message: problem });
        return z.NEVER;
      }),
    temperatureC: number('temperatureC', POSSIBLE_TEMPERATURE_C),
    humidityPercent: number('humidityPercent', POSSIBLE_HUMIDITY_PERCENT).nullish(),
  });
}

/**
 * @param latestInstant  seconds since 1970 UTC after which a reading lies in the future
 * Checked in tests/server/readings/post-readings.test.ts
 */
export const sentReadingsSchema = (latestInstant: number) =>
  z.object({
    /** the store's id, for scripts that wish to be sure: the token decides */
    store: z.string().optional(),
    readings: z
      .array(sentReading(latestInstant), { error: 'readings must be a list.' })
      .min(1, 'readings holds none.')
      .max(MAX_SENT_READINGS, `readings holds more than ${MAX_SENT_READINGS}: send fewer at a time.`),
  });
export type SentReadings = z.output<ReturnType<typeof sentReadingsSchema>>;
