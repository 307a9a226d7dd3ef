/**
 * What a packet can be. `hermetic` decides how its seed ages: in a hermetic container it keeps the moisture it was packed
 * with; in an open one it follows the humidity of the store. Status: common practice. A container is hermetic only while
 * its seal is sound; one that is opened often is better entered as open.
 */
export const CONTAINERS = [
  { key: 'foil-pouch', label: 'foil pouch, heat-sealed', hermetic: true },
  { key: 'glass-jar', label: 'glass jar, rubber seal', hermetic: true },
  { key: 'metal-tin', label: 'metal tin, sealed', hermetic: true },
  { key: 'screw-cap-tube', label: 'screw-cap tube, with gasket', hermetic: true },
  { key: 'glass-ampoule', label: 'glass ampoule, fused', hermetic: true },
  // Thin plastic lets water vapour through within months, so it counts as open.
  { key: 'plastic-bag', label: 'plastic bag', hermetic: false },
  { key: 'plastic-box', label: 'plastic box, snap lid', hermetic: false },
  { key: 'paper-envelope', label: 'paper envelope', hermetic: false },
  { key: 'cloth-bag', label: 'cloth bag', hermetic: false },
  { key: 'open-tray', label: 'open tray', hermetic: false },
] as const satisfies readonly { key: string; label: string; hermetic: boolean }[];

export type ContainerKey = (typeof CONTAINERS)[number]['key'];

/** The keys alone, for input rules and the database. */
export const CONTAINER_KEYS = CONTAINERS.map((container) => container.key) as [ContainerKey, ...ContainerKey[]];

const HERMETIC_BY_KEY: ReadonlyMap<string, boolean> = new Map(CONTAINERS.map(({ key, hermetic }) => [key, hermetic]));

/**
 * Whether a kind of container keeps its own moisture.
 *
 * @param key  a container's key
 * @returns true for hermetic kinds, false for open ones
 * @throws RangeError when there is no such container
 * Checked in tests/domain/stock/containers.test.ts
 */
export function isHermetic(key: string): boolean {
  const hermetic = HERMETIC_BY_KEY.get(key);
  if (hermetic === undefined)
    throw new RangeError(`isHermetic: container must be one of ${CONTAINER_KEYS}, got ${key}`);
  return hermetic;
}
