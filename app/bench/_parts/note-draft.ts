/*
 * A note that is being written is kept on the device until it is added, so that a call or an empty battery in the middle
 * of a sentence costs nothing. Only a convenience: where the browser keeps nothing, writing works all the same.
 */

const key = (trayNumber: string) => `hilum-note-${trayNumber}`;

export function noteDraft(trayNumber: string): string {
  try {
    return localStorage.getItem(key(trayNumber)) ?? '';
  } catch {
    return '';
  }
}

export function keepNoteDraft(trayNumber: string, text: string): void {
  try {
    if (text === '') localStorage.removeItem(key(trayNumber));
    else localStorage.setItem(key(trayNumber), text);
  } catch {
    // No room or a private window: what stands in the box still stands there.
  }
}
