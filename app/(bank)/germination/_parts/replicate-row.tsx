'use client';

import clsx from 'clsx';
import { type KeyboardEvent, useId } from 'react';
import { SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import { Dish } from './dish';
import { type DraftCounts, type ReplicateDraft, readDraft } from './replicate-draft';
import { ClassIcon } from './seed-glyph';

interface Props {
  row: number;
  draft: ReplicateDraft;
  /** messages by field name, as the form answered */
  errors: Record<string, string>;
  onChange: (row: number, box: keyof ReplicateDraft, value: string) => void;
  onKeyDown: (event: KeyboardEvent<HTMLInputElement>) => void;
}

/** One replicate: its dish, what is left in it, and five boxes for the classes. */
export function ReplicateRow({ row, draft, errors, onChange, onKeyDown }: Props) {
  const id = useId();
  const dish = readDraft(draft);
  const name = `Replicate ${row + 1}`;
  const messages = messagesOf(row, errors);
  const box = (key: keyof ReplicateDraft) => ({
    id: `${id}-${key}`,
    name: `replicates.${row}.${key}`,
    value: draft[key],
    inputMode: 'numeric' as const,
    autoComplete: 'off',
    enterKeyHint: 'next' as const,
    'aria-invalid': isWrong(row, key, errors) || undefined,
    'aria-describedby': `${id}-left ${id}-error`,
    onChange: (event: { target: HTMLInputElement }) => onChange(row, key, event.target.value),
    onKeyDown,
  });
  return (
    <fieldset className="sheet grid gap-3 p-3! sm:p-4!">
      <legend className="sr-only">{name}</legend>
      <div className="flex items-center justify-between gap-3">
        <div className="grid gap-2">
          <p aria-hidden className="font-semibold">
            {name}
          </p>
          <div className="flex items-center gap-2">
            <input {...box('seeds')} className="field figures w-20!" />
            <label htmlFor={`${id}-seeds`}>seeds set</label>
          </div>
          <p id={`${id}-left`} className={clsx('min-h-6', dish.left < 0 ? 'font-semibold text-madder' : 'quiet')}>
            {leftInWords(dish)}
          </p>
        </div>
        <Dish
          seeds={dish.seeds}
          counts={dish.counts}
          label={`${name}: ${dish.counts.normal ?? 0} normal of ${dish.seeds} seeds`}
          className="size-32 shrink-0 sm:size-36"
        />
      </div>
      <div className="grid grid-cols-5 gap-1.5 sm:gap-2">
        {SEED_CLASSES.map((seedClass) => (
          <div key={seedClass} className="grid min-w-0 gap-1">
            <label
              htmlFor={`${id}-${seedClass}`}
              className="label flex flex-col items-start gap-0.5 sm:flex-row sm:items-center sm:gap-1.5"
            >
              <ClassIcon state={seedClass} />
              {seedClass}
            </label>
            <input
              {...box(seedClass)}
              data-count-box
              placeholder={seedClass === 'dead' && dish.begun && dish.left > 0 ? String(dish.left) : undefined}
              onFocus={(event) => event.currentTarget.select()}
              className="field figures min-h-14! px-1! text-center text-[1.375rem]!"
            />
          </div>
        ))}
      </div>
      <div id={`${id}-error`} className="grid gap-1 text-sm font-semibold text-madder empty:hidden">
        {messages.map((message) => (
          <p key={message}>{message}</p>
        ))}
      </div>
    </fieldset>
  );
}

function leftInWords({ begun, left, restIsDead, seeds }: DraftCounts): string {
  if (seeds === 0) return '';
  if (left < 0) return `${-left} too many`;
  if (!begun || left === 0) return `left: ${left}`;
  return restIsDead ? `left: ${left}, taken as dead` : `left: ${left}`;
}

/** A message about the whole row marks its first class box, so that the form can bring the eye there. */
function isWrong(row: number, key: keyof ReplicateDraft, errors: Record<string, string>): boolean {
  return Boolean(errors[`replicates.${row}.${key}`] || (key === 'normal' && errors[`replicates.${row}`]));
}

function messagesOf(row: number, errors: Record<string, string>): string[] {
  const whole = errors[`replicates.${row}`];
  const boxes = (['seeds', ...SEED_CLASSES] as const).flatMap((key) => {
    const message = errors[`replicates.${row}.${key}`];
    return message ? [`${key}: ${message}`] : [];
  });
  return whole ? [whole, ...boxes] : boxes;
}
