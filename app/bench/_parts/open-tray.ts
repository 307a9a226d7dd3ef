import { useSyncExternalStore } from 'react';
import { keepHash } from './keep-hash';

/*
 * The open tray stands in the address's hash, so that going back leads to the list, a label's code can name a tray, and
 * no connection is needed to change between them. Going on to the next tray takes its place: one step back from any
 * tray is the list.
 */

if (typeof window !== 'undefined') keepHash();

/** The number in '#T-0204', or null. */
export function trayInHash(hash: string): string | null {
  const number = hash.replace(/^#/, '').trim().toUpperCase();
  return number === '' ? null : number;
}

/** The open tray's number. */
export function useOpenTray(): string | null {
  return useSyncExternalStore(subscribe, here, () => null);
}

let openedFromList = false;

/** To be called when a row of the list is followed, so that going back pops what that added. */
export function noteOpenedFromList(): void {
  openedFromList = true;
}

export function goToTrayFromList(number: string): void {
  noteOpenedFromList();
  location.hash = number;
}

/** Goes on to another tray in place of the one that is open. */
export function goToTray(number: string): void {
  location.replace(`#${number}`);
}

export function backToList(): void {
  if (openedFromList) {
    openedFromList = false;
    history.back();
  } else {
    location.replace('#');
  }
}

function subscribe(listener: () => void): () => void {
  addEventListener('hashchange', listener);
  addEventListener('popstate', listener);
  return () => {
    removeEventListener('hashchange', listener);
    removeEventListener('popstate', listener);
  };
}

const here = () => trayInHash(location.hash);
