'use client';

import { Minus, Plus } from 'lucide-react';
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { useFormState } from '@/app/_components/form/form';
import { MOST_REPLICATES_IN_FORM } from '@/lib/schemas/germination-query';
import { blankDraft, draftsFromFields, type ReplicateDraft, readDraft } from './replicate-draft';
import { ReplicateRow } from './replicate-row';

interface Props {
  initial: ReplicateDraft[];
  /** Address of this form up to 'replicates=4', for browsers without scripts; null where the number is settled. */
  addressWithoutReplicates: string | null;
}

/** All replicates of a test being written down: how many, and a row of boxes with its dish for each. */
export function ReplicateEntry({ initial, addressWithoutReplicates }: Props) {
  const { state } = useFormState();
  const [drafts, setDrafts] = useState(() => draftsFromFields(state.values) ?? initial);
  const [scripted, setScripted] = useState(false);
  const area = useRef<HTMLDivElement>(null);

  // What was typed before the script arrived stands in the boxes already: take it over.
  useEffect(() => {
    setDrafts((rows) => rows.map((row, index) => typedInto(area.current, index, row)));
    setScripted(true);
  }, []);

  const change = (row: number, box: keyof ReplicateDraft, value: string) =>
    setDrafts((rows) => rows.map((draft, index) => (index === row ? { ...draft, [box]: value } : draft)));
  const setCount = (count: number) =>
    setDrafts((rows) =>
      Array.from({ length: count }, (_, index) => rows[index] ?? blankDraft(rows.at(-1)?.seeds ?? '50')),
    );
  const setSeedsOfAll = (seeds: string) => setDrafts((rows) => rows.map((draft) => ({ ...draft, seeds })));

  return (
    <section aria-labelledby="replicates-title" className="grid gap-4" ref={area}>
      <div>
        <h2 id="replicates-title">Replicates</h2>
        <p className="label">
          Count every dish by itself. A class left blank means none; dead left blank means all that is left.
        </p>
      </div>
      {scripted ? (
        <div className="flex flex-wrap items-end gap-x-6 gap-y-3">
          <HowMany count={drafts.length} onChange={setCount} />
          <label className="grid gap-1">
            <span className="label">seeds in each</span>
            <input
              inputMode="numeric"
              autoComplete="off"
              enterKeyHint="next"
              value={commonSeeds(drafts)}
              placeholder="differ"
              onChange={(event) => setSeedsOfAll(event.target.value)}
              onKeyDown={moveOnEnter}
              data-count-box
              className="field figures w-24! text-lg!"
            />
          </label>
        </div>
      ) : addressWithoutReplicates === null ? null : (
        <noscript>
          <p className="label flex flex-wrap items-center gap-x-1">
            Number of replicates:
            {[1, 2, 3, 4, 5, 6, 7, 8].map((count) => (
              <a
                key={count}
                href={`${addressWithoutReplicates}replicates=${count}`}
                className="grid size-11 place-items-center underline"
              >
                {count}
              </a>
            ))}
          </p>
        </noscript>
      )}
      {state.fieldErrors.replicates && (
        <p className="text-sm font-semibold text-madder" role="alert" tabIndex={-1}>
          {state.fieldErrors.replicates}
        </p>
      )}
      <div className="grid gap-4 2xl:grid-cols-2">
        {drafts.map((draft, index) => (
          <ReplicateRow
            // biome-ignore lint/suspicious/noArrayIndexKey: a replicate is its place on the bench
            key={index}
            row={index}
            draft={draft}
            errors={state.fieldErrors}
            onChange={change}
            onKeyDown={moveOnEnter}
          />
        ))}
      </div>
      <RunningSum drafts={drafts} />
    </section>
  );
}

function HowMany({ count, onChange }: { count: number; onChange: (count: number) => void }) {
  return (
    <fieldset className="grid gap-1">
      <legend className="label mb-1">replicates</legend>
      <div className="flex items-center gap-1">
        <button
          type="button"
          className="button size-11 px-0!"
          aria-label="One replicate fewer"
          disabled={count <= 1}
          onClick={() => onChange(count - 1)}
        >
          <Minus aria-hidden size={20} />
        </button>
        <output className="figures w-10 text-center text-lg font-semibold">{count}</output>
        <button
          type="button"
          className="button size-11 px-0!"
          aria-label="One replicate more"
          disabled={count >= MOST_REPLICATES_IN_FORM}
          onClick={() => onChange(count + 1)}
        >
          <Plus aria-hidden size={20} />
        </button>
      </div>
    </fieldset>
  );
}

function RunningSum({ drafts }: { drafts: ReplicateDraft[] }) {
  const begun = drafts.map(readDraft).filter((dish) => dish.begun);
  const seeds = begun.reduce((sum, dish) => sum + dish.seeds, 0);
  const normal = begun.reduce((sum, dish) => sum + (dish.counts.normal ?? 0), 0);
  const dishes = begun.length === 1 ? 'one replicate' : `${begun.length} replicates`;
  return (
    <p aria-live="polite" className="min-h-6">
      {begun.length > 0 && seeds > 0 && (
        <>
          So far <b className="figures">{normal}</b> normal of <b className="figures">{seeds}</b> seeds in {dishes}.
        </>
      )}
    </p>
  );
}

/** Enter goes to the next box, and from the last one to the button that saves. */
function moveOnEnter(event: KeyboardEvent<HTMLInputElement>) {
  if (event.key !== 'Enter' || event.nativeEvent.isComposing) return;
  event.preventDefault();
  const form = event.currentTarget.form;
  const boxes = [...(form?.querySelectorAll<HTMLInputElement>('[data-count-box]') ?? [])];
  const next = boxes[boxes.indexOf(event.currentTarget) + 1];
  (next ?? form?.querySelector<HTMLButtonElement>('button[type="submit"]'))?.focus();
  next?.select();
}

const commonSeeds = (drafts: ReplicateDraft[]) => {
  const [first] = drafts;
  return first && drafts.every((draft) => draft.seeds === first.seeds) ? first.seeds : '';
};

function typedInto(area: HTMLElement | null, row: number, draft: ReplicateDraft): ReplicateDraft {
  const typed = { ...draft };
  for (const box of Object.keys(draft) as (keyof ReplicateDraft)[]) {
    const input = area?.querySelector<HTMLInputElement>(`[name="replicates.${row}.${box}"]`);
    if (input) typed[box] = input.value;
  }
  return typed;
}
