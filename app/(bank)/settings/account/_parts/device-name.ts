const BROWSERS = [
  ['Edg/', 'Edge'],
  ['OPR/', 'Opera'],
  ['Firefox/', 'Firefox'],
  ['Chrome/', 'Chrome'],
  ['Safari/', 'Safari'],
] as const;
const SYSTEMS = [
  ['iPhone', 'iPhone'],
  ['iPad', 'iPad'],
  ['Android', 'Android'],
  ['Windows', 'Windows'],
  ['Mac OS X', 'Mac'],
  ['Linux', 'Linux'],
] as const;

/** 'Firefox on Android': enough to know one's own devices apart. Order matters: each browser also names later ones. */
export function deviceName(userAgent: string): string {
  const find = (names: readonly (readonly [string, string])[]) => names.find(([sign]) => userAgent.includes(sign))?.[1];
  const browser = find(BROWSERS);
  const system = find(SYSTEMS);
  if (browser && system) return `${browser} on ${system}`;
  return browser ?? system ?? 'Unknown device';
}
