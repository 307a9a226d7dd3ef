/**
 * What the code on a label says. Where phones can reach the bank it is an address, so that any phone's camera opens the
 * packet; otherwise the bare number, which makes the smallest code. Only our own number stands in it: never a name or a
 * place, so a label that is lost tells nothing, and a packet may be moved without a new label.
 */

/**
 * Text of a packet's code.
 *
 * @param number       packet number, 'P-00012'
 * @param bankAddress  where phones reach this bank, 'https://seedroom.example:4300', or null when they do not
 * @returns 'https://seedroom.example:4300/p/P-00012', or the bare number
 * Checked in tests/domain/labels/read-code.test.ts
 */
export function packetCode(number: string, bankAddress: string | null): string {
  return codeText('p', number, bankAddress);
}

/**
 * Text of a lot's code.
 *
 * @param number       lot number, 'L-2024-007'
 * @param bankAddress  where phones reach this bank, or null when they do not
 * @returns 'https://seedroom.example:4300/l/L-2024-007', or the bare number
 * Checked in tests/domain/labels/read-code.test.ts
 */
export function lotCode(number: string, bankAddress: string | null): string {
  return codeText('l', number, bankAddress);
}

function codeText(letter: 'p' | 'l', number: string, bankAddress: string | null): string {
  if (bankAddress === null) return number;
  return `${bankAddress.replace(/\/+$/, '')}/${letter}/${encodeURIComponent(number)}`;
}
