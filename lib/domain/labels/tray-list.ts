import { readCode } from './read-code';

/** Most trays of one print run: as many as a walk-in room holds. */
export const MOST_TRAYS = 200;

/**
 * Numbers of tests in an address or as somebody wrote them.
 *
 * @param text  'T-0204,T-0205', or 't204 t205'
 * @returns numbers in the order written, each once, at most MOST_TRAYS; what is none is passed over
 * Checked in tests/domain/labels/tray-list.test.ts
 */
export function readTrayList(text: string): string[] {
  const found = new Set<string>();
  for (const word of text.split(/[\s,;]+/)) {
    const code = readCode(word);
    if (code?.kind === 'tray' && found.size < MOST_TRAYS) found.add(code.number);
  }
  return [...found];
}
