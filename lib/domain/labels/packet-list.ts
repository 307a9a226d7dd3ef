/**
 * Many packet numbers in an address. Five hundred of them written out would be longer than a server takes, so numbers in
 * a row become a range: 'P-00012' to 'P-00080' and 'P-00095' are '12-80.95'. What people write ('P-00012,P-00013') is
 * read as well.
 */

/** Most packets of one print run, and most characters of their list: browsers send an address several times over. */
export const MOST_PACKETS = 2000;
export const MOST_LIST_LENGTH = 3000;

const DIGITS = 5;
const numberOf = (running: number) => `P-${String(running).padStart(DIGITS, '0')}`;

/**
 * @param text  '12-80.95', or 'P-00012, P-00013'
 * @returns packet numbers in the order written, each once, at most MOST_PACKETS; what is neither is passed over
 * Checked in tests/domain/labels/packet-list.test.ts
 */
export function readPacketList(text: string): string[] {
  const found = new Set<string>();
  for (const word of text.split(/[\s,.;]+/)) {
    const range = /^(\d{1,9})-(\d{1,9})$/.exec(word);
    const single = /^(?:P-?)?(\d{1,9})$/i.exec(word);
    const first = Number(range?.[1] ?? single?.[1] ?? Number.NaN);
    const last = Number(range?.[2] ?? first);
    for (let running = first; running <= last && found.size < MOST_PACKETS; running++) found.add(numberOf(running));
  }
  return [...found];
}

/**
 * @param numbers  packet numbers in any order
 * @returns the shortest list that readPacketList reads as the same packets, in ascending order
 * Checked in tests/domain/labels/packet-list.test.ts
 */
export function writePacketList(numbers: readonly string[]): string {
  const running = [...new Set(numbers)]
    .map((number) => Number(number.replace(/^P-/, '')))
    .filter(Number.isInteger)
    .sort((one, other) => one - other);
  const ranges: { first: number; last: number }[] = [];
  for (const value of running) {
    const range = ranges.at(-1);
    if (range && value === range.last + 1) range.last = value;
    else ranges.push({ first: value, last: value });
  }
  return ranges.map(({ first, last }) => (first === last ? `${first}` : `${first}-${last}`)).join('.');
}
