import type { RunningBench } from './create-bench';

/** A burst of taps goes to the server as one. */
const AFTER_ENTRY_MS = 800;
const WHILE_LOOKED_AT_MS = 60_000;
const BACK_OFF_MS = [2_000, 5_000, 15_000, 30_000, 60_000];
const LOOK_AT_CLOCK_MS = 20_000;
const TABS_PAUSE_MS = 150;

export interface Touch {
  /** something was entered */
  soon(): void;
  now(): void;
}

/**
 * When the bench of this page goes to the server: on opening, when a connection comes, when the page is looked at again,
 * soon after an entry, every minute while it is looked at, and again and again, ever more slowly, while it is not reached.
 */
export function keepInTouch(bench: RunningBench, tabs: BroadcastChannel | null): Touch {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let underWay = false;
  let wanted = false;
  let failures = 0;

  function goIn(milliseconds: number): void {
    clearTimeout(timer);
    timer = setTimeout(go, milliseconds);
  }

  async function go(): Promise<void> {
    clearTimeout(timer);
    if (underWay) {
      wanted = true;
      return;
    }
    underWay = true;
    wanted = false;
    const reached = await bench.synchronise().catch(() => false);
    underWay = false;
    if (reached === false) failures += 1;
    else failures = 0;
    if (wanted && reached !== false) return goIn(AFTER_ENTRY_MS);
    if (reached === false) return goIn(BACK_OFF_MS[Math.min(failures, BACK_OFF_MS.length) - 1] as number);
    // Another tab is at it, and may be closed before it is done.
    if (document.visibilityState === 'visible' || bench.view().waiting > 0) goIn(WHILE_LOOKED_AT_MS);
  }

  function atOnce(): void {
    failures = 0;
    void go();
  }

  window.addEventListener('online', () => {
    bench.look('online');
    atOnce();
  });
  window.addEventListener('offline', () => bench.look('offline'));
  // Also when the page is left: what waits may get out before the phone sleeps.
  document.addEventListener('visibilitychange', () => {
    bench.look();
    if (document.visibilityState === 'visible' || bench.view().waiting > 0) atOnce();
  });
  window.addEventListener('pageshow', ({ persisted }) => persisted && atOnce());
  setInterval(() => bench.look(), LOOK_AT_CLOCK_MS);

  let looking: ReturnType<typeof setTimeout> | undefined;
  tabs?.addEventListener('message', () => {
    clearTimeout(looking);
    looking = setTimeout(() => void bench.lookAgain(), TABS_PAUSE_MS);
  });

  if (!navigator.onLine) bench.look('offline');
  atOnce();
  return {
    soon() {
      if (underWay) wanted = true;
      else if (failures === 0) goIn(AFTER_ENTRY_MS);
    },
    now: atOnce,
  };
}
