import { useEffect } from 'react';

/** Keeps the screen on while a tray is open, where the device allows it: wet hands cannot wake it. */
export function useWakeLock(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let left = false;
    const hold = async () => {
      if (document.visibilityState !== 'visible' || !navigator.wakeLock) return;
      try {
        lock = await navigator.wakeLock.request('screen');
        if (left) await lock.release();
      } catch {
        // Refused when the battery is low; the screen then goes dark as it always does.
      }
    };
    // The device lets go whenever the page is hidden.
    document.addEventListener('visibilitychange', hold);
    void hold();
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', hold);
      void lock?.release().catch(() => {});
    };
  }, []);
}
