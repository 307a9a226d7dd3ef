/**
 * How the moisture of a lot is found, and how far each way can be trusted. The one list: input rules, the database and
 * the screens all use it.
 *
 * `standardPoints` is one standard deviation of a result about the seed's true moisture, in points of percent. Status:
 * our own choice, in the order that everybody agrees on (oven, meter, air over the seed). The oven: as far as two
 * samples may differ (0.2). A meter: half a point, where it is set for this crop. The air: what the equilibrium equation
 * is off, root mean square, beside the recalled table of 25 vegetables (0.94, docs/methods/moisture.md), rounded up.
 */
export const MOISTURE_METHODS = [
  { key: 'oven-low', label: 'oven, 103 °C for 17 hours', short: 'oven', oven: true, standardPoints: 0.2 },
  { key: 'oven-high', label: 'oven, 130 °C', short: 'oven', oven: true, standardPoints: 0.2 },
  { key: 'meter', label: 'moisture meter', short: 'meter', oven: false, standardPoints: 0.5 },
  {
    key: 'air',
    label: 'humidity of the air over the seed',
    short: 'air over the seed',
    oven: false,
    standardPoints: 1,
  },
] as const satisfies readonly { key: string; label: string; short: string; oven: boolean; standardPoints: number }[];

export type MoistureMethod = (typeof MOISTURE_METHODS)[number];
export type MoistureMethodKey = MoistureMethod['key'];

/** The keys alone, for input rules and the database. */
export const MOISTURE_METHOD_KEYS = MOISTURE_METHODS.map(({ key }) => key) as [
  MoistureMethodKey,
  ...MoistureMethodKey[],
];

/** Root mean square and largest difference of the equilibrium equation from the recalled table, points of moisture. */
export const AIR_METHOD_ERROR_POINTS = { rootMeanSquare: 0.94, largest: 3.1 } as const;

const BY_KEY: ReadonlyMap<string, MoistureMethod> = new Map(MOISTURE_METHODS.map((method) => [method.key, method]));

/**
 * A way of finding moisture, by its key.
 *
 * @param key  a key of MOISTURE_METHODS
 * @returns the method
 * @throws RangeError when there is no such method
 * Checked in tests/domain/moisture/moisture-methods.test.ts
 */
export function moistureMethod(key: string): MoistureMethod {
  const method = BY_KEY.get(key);
  if (method === undefined) {
    throw new RangeError(`moistureMethod: key must be one of ${MOISTURE_METHOD_KEYS}, got ${key}`);
  }
  return method;
}
