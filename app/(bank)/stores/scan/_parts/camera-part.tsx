'use client';

import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useState } from 'react';
import { Notice } from '@/app/_components/notice';
import { LiveCamera } from './live-camera';
import { PhotoField } from './photo-field';

type Way = 'unknown' | 'live' | 'insecure' | 'no-camera';

/** The camera where the browser gives it, a photograph everywhere. What was read becomes the page's address. */
export function CameraPart() {
  const router = useRouter();
  const [way, setWay] = useState<Way>('unknown');
  useEffect(() => {
    // A browser on plain http hides its camera from every page.
    if (!window.isSecureContext) setWay('insecure');
    else setWay('mediaDevices' in navigator ? 'live' : 'no-camera');
  }, []);
  const show = useCallback(
    (code: string) => {
      navigator.vibrate?.(60);
      router.replace(`/stores/scan?code=${encodeURIComponent(code)}`, { scroll: false });
      document.getElementById('found')?.scrollIntoView({ block: 'nearest' });
    },
    [router],
  );
  return (
    <div className="grid gap-4">
      {way === 'live' && <LiveCamera onCode={show} />}
      {way === 'insecure' && (
        <Notice kind="note">
          The live camera needs an address that begins with https. Take a picture of the label instead, or type its
          number.
        </Notice>
      )}
      {way === 'no-camera' && (
        <Notice kind="note">This browser has no camera. Choose a picture of the label, or type its number.</Notice>
      )}
      <PhotoField onCode={show} />
    </div>
  );
}
