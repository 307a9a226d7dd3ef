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

/**
 * Text of the code on a dish: it names the tray, and which of its dishes this is. As a number with a hyphen, because a
 * question mark or a slash in an address would make a larger code, or get lost on its way through a proxy.
 *
 * @param number       number of the test, 'T-0204'
 * @param dish         from 1; null: the whole tray
 * @param bankAddress  where phones reach this bank, or null when they do not
 * @returns 'https://seedroom.example:4300/t/T-0204-2', or 'T-0204-2'
 * Checked in tests/domain/labels/read-code.test.ts
 */
export function trayCode(number: string, dish: number | null, bankAddress: string | null): string {
  return codeText('t', dish === null ? number : `${number}-${dish}`, bankAddress);
}

function codeText(letter: 'p' | 'l' | 't', number: string, bankAddress: string | null): string {
  if (bankAddress === null) return number;
  return `${bankAddress.replace(/\/+$/, '')}/${letter}/${encodeURIComponent(number)}`;
}
