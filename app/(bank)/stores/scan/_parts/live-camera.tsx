'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import { Notice } from '@/app/_components/notice';
import { cameraTrouble } from './camera-trouble';

/** Between two looks: quick enough for a hand that holds still for a moment, and the battery lasts. */
const BETWEEN_LOOKS_MS = 120;
/** A hand that trembles hides a code for a look or two. */
const LOOKS_UNTIL_GONE = 8;

type State = { is: 'off' } | { is: 'starting' } | { is: 'on'; torch: boolean } | { is: 'failed'; words: string };

/** The live picture of the camera at the back, looked through for a code several times a second. */
export function LiveCamera({ onCode }: { onCode: (code: string) => void }) {
  const video = useRef<HTMLVideoElement>(null);
  const stream = useRef<MediaStream | null>(null);
  const [state, setState] = useState<State>({ is: 'off' });
  const [torchOn, setTorchOn] = useState(false);

  const stop = useCallback(() => {
    for (const track of stream.current?.getTracks() ?? []) track.stop();
    stream.current = null;
  }, []);

  const start = useCallback(async () => {
    setState({ is: 'starting' });
    try {
      const opened = await navigator.mediaDevices.getUserMedia({
        video: { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } },
      });
      // Somebody left the page while the browser asked whether it may.
      if (!video.current) {
        for (const track of opened.getTracks()) track.stop();
        return;
      }
      stream.current = opened;
      video.current.srcObject = opened;
      await video.current.play();
      const [track] = opened.getVideoTracks();
      track?.addEventListener('ended', () => setState({ is: 'off' }));
      setState({ is: 'on', torch: hasTorch(track) });
    } catch (error) {
      stop();
      setState({ is: 'failed', words: cameraTrouble(error) });
    }
  }, [stop]);

  // Who allowed the camera before is not asked to press a button.
  useEffect(() => {
    let left = false;
    void navigator.permissions
      ?.query({ name: 'camera' as PermissionName })
      .then((permission) => {
        if (permission.state === 'granted' && !left) void start();
      })
      .catch(() => undefined);
    return () => {
      left = true;
      stop();
    };
  }, [start, stop]);

  useEffect(() => {
    if (state.is !== 'on') return;
    let left = false;
    void look();
    return () => {
      left = true;
    };

    async function look() {
      const { PictureReader } = await import('./decode-picture');
      const reader = new PictureReader();
      let seen: string | null = null;
      let emptyLooks = 0;
      while (!left) {
        const code = video.current && !document.hidden ? await reader.read(video.current) : null;
        emptyLooks = code === null ? emptyLooks + 1 : 0;
        // A label that stays before the camera is told once; it must have left to be told again.
        if (code !== null && code !== seen && !left) onCode(code);
        if (code !== null || emptyLooks > LOOKS_UNTIL_GONE) seen = code;
        await new Promise((resolve) => setTimeout(resolve, BETWEEN_LOOKS_MS));
      }
    }
  }, [state.is, onCode]);

  const switchTorch = async () => {
    const [track] = stream.current?.getVideoTracks() ?? [];
    // 'torch' is missing from the DOM's types: it is in the W3C's Image Capture draft.
    await track?.applyConstraints({ advanced: [{ torch: !torchOn } as MediaTrackConstraintSet] });
    setTorchOn(!torchOn);
  };

  return (
    <div className="grid gap-3">
      <video
        ref={video}
        muted
        playsInline
        aria-label="Picture of the camera"
        className={`max-h-[45dvh] w-full rounded-paper bg-black object-cover ${state.is === 'on' ? '' : 'hidden'}`}
      />
      {state.is === 'failed' && <Notice kind="error">{state.words}</Notice>}
      <div className="flex flex-wrap gap-2">
        {state.is === 'on' ? (
          <button
            type="button"
            className="button"
            onClick={() => {
              stop();
              setState({ is: 'off' });
            }}
          >
            Stop the camera
          </button>
        ) : (
          <button type="button" className="button main min-h-14" onClick={() => void start()}>
            {state.is === 'starting' ? 'Starting …' : 'Start the camera'}
          </button>
        )}
        {state.is === 'on' && state.torch && (
          <button type="button" className="button" aria-pressed={torchOn} onClick={() => void switchTorch()}>
            Light{torchOn && <span aria-hidden>✓</span>}
          </button>
        )}
      </div>
    </div>
  );
}

function hasTorch(track: MediaStreamTrack | undefined): boolean {
  const capabilities = track?.getCapabilities?.();
  return capabilities !== undefined && 'torch' in capabilities && capabilities.torch === true;
}
