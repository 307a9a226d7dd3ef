'use client';

import { useRouter } from 'next/navigation';
import { type PointerEvent, type ReactNode, useRef, useState } from 'react';
import { type ClimateAddress, climatePath } from '@/app/_format/climate-path';

interface Props {
  storeId: string;
  fromEpochSeconds: number;
  toEpochSeconds: number;
  address: ClimateAddress;
  children: ReactNode;
}

/** A drag shorter than this share of the width is a slip. */
const SHORTEST_DRAG = 0.015;

/** Dragging across the picture looks closer. The fields and buttons above it do the same for whoever does not drag. */
export function DragToZoom({ storeId, fromEpochSeconds, toEpochSeconds, address, children }: Props) {
  const router = useRouter();
  const box = useRef<HTMLDivElement>(null);
  const [drag, setDrag] = useState<{ start: number; end: number } | null>(null);

  function shareAt(event: PointerEvent): number | null {
    const plot = box.current?.querySelector('[data-plot]')?.getBoundingClientRect();
    if (!plot) return null;
    return Math.min(1, Math.max(0, (event.clientX - plot.left) / plot.width));
  }

  function show() {
    if (!drag) return;
    setDrag(null);
    const [start, end] = [Math.min(drag.start, drag.end), Math.max(drag.start, drag.end)];
    if (end - start < SHORTEST_DRAG) return;
    const dateAt = (share: number) =>
      new Date((fromEpochSeconds + share * (toEpochSeconds - fromEpochSeconds)) * 1000 - 1).toISOString().slice(0, 10);
    router.push(climatePath(storeId, { ...address, from: dateAt(start + 1e-9), to: dateAt(end) }), { scroll: false });
  }

  return (
    <div
      ref={box}
      className="relative grid cursor-crosshair touch-pan-y gap-4 select-none"
      onPointerDown={(event) => {
        const share = event.button === 0 ? shareAt(event) : null;
        if (share === null) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        setDrag({ start: share, end: share });
      }}
      onPointerMove={(event) => {
        const share = shareAt(event);
        if (drag && share !== null) setDrag({ ...drag, end: share });
      }}
      onPointerUp={show}
      onPointerCancel={() => setDrag(null)}
    >
      {children}
      {drag && (
        // As the panels: figures to the left, the picture in the rest.
        <div aria-hidden className="pointer-events-none absolute inset-0 grid grid-cols-[2.5rem_1fr] gap-x-2">
          <div
            className="relative col-start-2 border-x-2 border-ink bg-ink/10"
            style={{
              marginLeft: `${Math.min(drag.start, drag.end) * 100}%`,
              marginRight: `${(1 - Math.max(drag.start, drag.end)) * 100}%`,
            }}
          />
        </div>
      )}
    </div>
  );
}
