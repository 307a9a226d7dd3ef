/** A tray at the bench. Follow it with a plain link, not the router's: the bench reads the hash when it is loaded. */
export const benchPath = (number?: string) =>
  number === undefined ? '/bench' : `/bench#${encodeURIComponent(number)}`;
