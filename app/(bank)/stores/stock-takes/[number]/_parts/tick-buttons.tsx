'use client';

import { startTransition, useActionState } from 'react';
import { nothingScanned } from '../../_parts/scan-state';
import { sendEntry } from '../../_parts/send-entry';
import { enterPacket } from '../../actions';

interface Props {
  stockTakeId: string;
  storeId: string;
  packetId: string;
  packetNumber: string;
  /** of the line, 0 when there is none yet */
  version: number;
}

/** Ticks a packet of the list, or undoes what was written of it. The row goes where it belongs; errors stay beside it. */
export function TickButtons({ stockTakeId, storeId, packetId, packetNumber, version }: Props) {
  const [state, send, pending] = useActionState(enterPacket, nothingScanned);
  const buttons =
    version === 0
      ? ([
          ['here', 'Here'],
          ['not-here', 'Not here'],
        ] as const)
      : ([['undo', 'Undo']] as const);
  return (
    <form
      action={send}
      noValidate
      onSubmit={(event) => {
        if (pending) event.preventDefault();
        else sendEntry(event, (data) => startTransition(() => send(data)));
      }}
      className="no-print flex flex-wrap gap-2"
    >
      <input type="hidden" name="stockTakeId" value={stockTakeId} />
      <input type="hidden" name="storeId" value={storeId} />
      <input type="hidden" name="packetId" value={packetId} />
      <input type="hidden" name="version" value={version} />
      {buttons.map(([what, label]) => (
        <button
          key={what}
          type="submit"
          name="what"
          value={what}
          className="button"
          aria-disabled={pending || undefined}
        >
          {label}
          <span className="sr-only"> {packetNumber}</span>
        </button>
      ))}
      {state.kind === 'error' && (
        <p role="alert" className="w-full text-sm font-semibold text-madder">
          {state.said}
        </p>
      )}
    </form>
  );
}
