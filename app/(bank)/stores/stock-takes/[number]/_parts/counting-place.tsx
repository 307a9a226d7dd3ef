'use client';

import clsx from 'clsx';
import { startTransition, useActionState, useEffect, useId, useRef } from 'react';
import { formatCount } from '@/app/_format/figures';
import type { PacketInStockTake } from '@/lib/server/queries/stock-take-packet';
import { foundInWords } from '../../_parts/found-words';
import { nothingScanned, type ScanState } from '../../_parts/scan-state';
import { sendEntry } from '../../_parts/send-entry';
import { enterPacket } from '../../actions';

interface Props {
  stockTakeId: string;
  storeId: string;
  /** a packet that was chosen from the list */
  chosen: PacketInStockTake | null;
}

const LOOK = {
  none: 'border-rule',
  done: 'border-leaf bg-leaf-soft',
  note: 'border-indigo bg-indigo-soft',
  error: 'border-madder bg-madder-soft',
} as const;

/**
 * The one field of a stock-take: a code, then perhaps its seeds. It keeps the focus, and the last packet stands under it
 * in large type, for somebody who looks up from a freezer.
 */
export function CountingPlace({ stockTakeId, storeId, chosen }: Props) {
  const [state, send, pending] = useActionState(enterPacket, { ...nothingScanned, packet: chosen });
  const field = useRef<HTMLInputElement>(null);
  const id = useId();
  useEffect(() => {
    if (state.attempt > 0) field.current?.focus();
  }, [state.attempt]);
  const hidden = (
    <>
      <input type="hidden" name="stockTakeId" value={stockTakeId} />
      <input type="hidden" name="storeId" value={storeId} />
    </>
  );
  return (
    <section aria-label="Look at a packet" className="sheet grid gap-4">
      <form
        action={send}
        noValidate
        onSubmit={(event) => {
          sendEntry(event, (data) => startTransition(() => send(data)));
          if (field.current) field.current.value = '';
        }}
        className="grid gap-1"
      >
        {hidden}
        <input type="hidden" name="what" value="text" />
        <label htmlFor={id} className="font-semibold">
          Code of a packet, or its seeds
        </label>
        <p id={`${id}-hint`} className="label">
          Scan or type P-00012. Then, if you count it, 1240 or 3.1 g.
        </p>
        <div className="flex gap-2">
          <input
            ref={field}
            id={id}
            name="text"
            autoComplete="off"
            autoCapitalize="characters"
            spellCheck={false}
            enterKeyHint="done"
            aria-describedby={`${id}-hint`}
            className="field figures min-h-14! text-lg"
          />
          <button type="submit" className="button main min-h-14!">
            Enter
          </button>
        </div>
      </form>
      <div
        role="status"
        aria-live="assertive"
        className={clsx('rounded-paper border-l-4 p-3 text-lg', LOOK[state.kind], state.kind === 'none' && 'hidden')}
      >
        {state.kind === 'error' && <b>Not entered. </b>}
        {pending && <span className="sr-only">Saving. </span>}
        {state.said}
      </div>
      {state.packet && <InHand state={state} packet={state.packet} send={send} hidden={hidden} pending={pending} />}
    </section>
  );
}

interface InHandProps {
  state: ScanState;
  packet: PacketInStockTake;
  send: (data: FormData) => void;
  hidden: React.ReactNode;
  pending: boolean;
}

/** The packet in hand: what the ledger says, and its seeds by keypad. */
function InHand({ state, packet, send, hidden, pending }: InHandProps) {
  const id = useId();
  const { line } = packet;
  return (
    <form
      key={`${packet.packetId} ${state.attempt}`}
      action={send}
      noValidate
      onSubmit={(event) => sendEntry(event, (data) => startTransition(() => send(data)))}
      className="grid gap-3 border-t border-rule pt-4"
    >
      {hidden}
      <input type="hidden" name="packetId" value={packet.packetId} />
      <input type="hidden" name="version" value={line?.version ?? 0} />
      <div>
        <h2 className="text-xl">
          <span className="figures">{packet.number}</span> {packet.accessionName}
        </h2>
        <p className="quiet">
          {packet.cropName} <span className="figures">{packet.lotNumber}</span>; the ledger says about{' '}
          {formatCount(packet.seeds)} seeds{packet.placeName && `, in ${packet.placeName}`}.
          {line && ` Written down: ${foundInWords(line)}.`}
        </p>
      </div>
      <div className="grid grid-cols-2 items-end gap-2 sm:flex">
        <label htmlFor={id} className="col-span-2 grid gap-1">
          <span className="font-semibold">Counted or weighed</span>
          <input
            id={id}
            name="amount"
            inputMode="decimal"
            autoComplete="off"
            className="field figures min-h-14! text-lg sm:w-40!"
          />
        </label>
        <button
          type="submit"
          name="what"
          value="seeds"
          className="button min-h-14!"
          aria-disabled={pending || undefined}
        >
          seeds
        </button>
        <button
          type="submit"
          name="what"
          value="grams"
          className="button min-h-14!"
          aria-disabled={pending || undefined}
        >
          grams
        </button>
        <button type="submit" name="what" value="not-here" className="button min-h-14!">
          Not here
        </button>
        {line ? (
          <button type="submit" name="what" value="undo" className="button min-h-14!">
            Undo
          </button>
        ) : (
          <button type="submit" name="what" value="here" className="button min-h-14!">
            Here
          </button>
        )}
      </div>
    </form>
  );
}
