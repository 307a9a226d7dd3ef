/*
 * The framework writes the address that it knows into the browser's each time it has drawn something: when the page has
 * loaded, and after a step back. It knows nothing of hashes that changed while it was drawing, so a tray that was opened
 * in that moment would be closed again. On the bench the hash is ours: whatever else is written, it stays.
 */

const BENCH = '/bench';

/** To be called once, before the page is drawn. Checked in tests/e2e/bench-open-tray.spec.ts */
export function keepHash(): void {
  const write = history.replaceState.bind(history);
  history.replaceState = (data, unused, address) => write(data, unused, withHash(address));
}

function withHash(address: string | URL | null | undefined): string | URL | null | undefined {
  if (address == null || location.pathname !== BENCH) return address;
  const to = new URL(address, location.href);
  if (to.origin !== location.origin || to.pathname !== BENCH) return address;
  to.hash = location.hash;
  return to;
}
