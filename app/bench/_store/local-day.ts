/** This device's calendar day, 'YYYY-MM-DD'. */
export function localDay(now: Date = new Date()): string {
  const two = (number: number) => String(number).padStart(2, '0');
  return `${String(now.getFullYear()).padStart(4, '0')}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
