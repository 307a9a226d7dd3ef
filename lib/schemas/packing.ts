/** How seed is packed: in what, at which moisture, sealed or not yet, with which desiccant. */
import type { z } from 'zod';
import { CONTAINER_KEYS, isHermetic } from '../domain/stock/containers';
import { DESICCANT_KEYS } from '../domain/stock/desiccants';
import { choice, tickBox } from './choice-field';
import { calendarDate, moisturePercent, numberBetween, optionalField } from './field-schemas';

/** grams of desiccant in one container; a large jar holds a few hundred */
const DESICCANT_G = { min: 0.1, max: 5_000 } as const;

export const desiccantFields = {
  desiccant: optionalField(choice(DESICCANT_KEYS, 'desiccant')),
  desiccantGrams: optionalField(numberBetween(DESICCANT_G, 'g')),
  /** left empty: after the usual time for its kind */
  changeDueOn: optionalField(calendarDate),
};

export const packingFields = {
  container: choice(CONTAINER_KEYS, 'container'),
  moisturePercent: optionalField(moisturePercent),
  /** the container was closed for good; left unticked it stands open, and Today says so */
  sealed: tickBox,
  ...desiccantFields,
};

interface Packing {
  container: string;
  sealed: boolean;
  desiccant?: string | undefined;
  desiccantGrams?: number | undefined;
  changeDueOn?: string | undefined;
}

/** What does not go together: beside the field that has to change. */
export function checkPacking(input: Packing, context: z.RefinementCtx): void {
  if (input.sealed && !isHermetic(input.container)) {
    const message =
      'This container lets air in and cannot be sealed: untick this, or choose one that keeps its moisture.';
    context.addIssue({ code: 'custom', path: ['sealed'], message });
  }
  checkDesiccant(input, context);
}

/** Grams or a day of change without a kind: somebody forgot to choose it. */
export function checkDesiccant(
  { desiccant, desiccantGrams, changeDueOn }: Omit<Packing, 'container' | 'sealed'>,
  context: z.RefinementCtx,
): void {
  if (desiccant === undefined && (desiccantGrams !== undefined || changeDueOn !== undefined)) {
    context.addIssue({ code: 'custom', path: ['desiccant'], message: 'Choose the desiccant.' });
  }
}

/** @param on  the day on which it was put in; the day of change lies after it */
export function checkChangeDue(on: string, changeDueOn: string | undefined, context: z.RefinementCtx): void {
  if (changeDueOn === undefined || changeDueOn > on) return;
  const message = `Write a day after ${on}, or leave this empty for the usual time.`;
  context.addIssue({ code: 'custom', path: ['changeDueOn'], message });
}
