/** A part of the address as it was typed: 'L-2019%20b' -> 'L-2019 b'. What cannot be decoded stays as it is. */
export function readParameter(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
