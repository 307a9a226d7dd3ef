/** What no logger in a seed store can have measured, and what is only doubtful. */

/**
 * Degrees C. Below is colder than a deep freezer gets (liquid nitrogen has its own sensors); above, hotter than seed
 * survives an hour of. Codes for 'no sensor' (-999, -127, 999.9, 6553.5) lie outside as well. Common practice.
 */
export const POSSIBLE_TEMPERATURE_C = { min: -90, max: 100 } as const;

/**
 * Percent. Capacitive sensors read a little over 100 in air that is full and a little under 0 in dry air; so little is
 * taken as 100 or 0. Further out the humidity is left away and the temperature kept. Common practice.
 */
export const POSSIBLE_HUMIDITY_PERCENT = { min: -2, max: 105 } as const;

/**
 * Degrees C: what a widespread digital sensor holds before its first measurement (from memory: its data sheet). Taken
 * for that only when both neighbours are far from it.
 */
export const POWER_ON_TEMPERATURE_C = 85;
export const FAR_FROM_NEIGHBOURS_K = 20;

/** Kelvin from one reading to the next: told, kept. A door left open for an hour does less. Common practice. */
export const JUMP_K = 15;

/** 1985-01-01: an earlier time comes from a clock that lost its battery. A reset to a later date shows as a gap. */
export const EARLIEST_INSTANT = 473_385_600;
