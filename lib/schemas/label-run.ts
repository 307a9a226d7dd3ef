/** What an address says of labels to be printed: which packets, on what, from where on. */
import { z } from 'zod';
import { CODE_KIND_KEYS } from '../domain/labels/label-format';
import { blankToUndefined, countBetween, numberBetween } from './field-schemas';

/** Labels of one packet: a box of sachets. */
const COPIES = { min: 1, max: 100 } as const;
/** A printer that is out by more than this has the wrong paper in it. */
const SHIFT_MM = { min: -10, max: 10 } as const;
/** More than any sheet has; whether this sheet has it is checked against the format. */
const START = { min: 1, max: 900 } as const;

export const printRunQuery = z.object({
  format: z.preprocess(blankToUndefined, z.string({ error: 'Choose the labels.' }).max(100, 'Choose the labels.')),
  start: countBetween(START, 'labels'),
  copies: countBetween(COPIES, 'copies'),
  shiftX: numberBetween(SHIFT_MM, 'mm'),
  shiftY: numberBetween(SHIFT_MM, 'mm'),
  /** left empty: the format's own */
  code: z.preprocess(blankToUndefined, z.enum(CODE_KIND_KEYS, { error: 'Choose the code.' }).optional()),
});

export type PrintRunQuery = z.infer<typeof printRunQuery>;

/** What stands in the fields before anything was chosen. */
export const USUAL_RUN = { format: 'a4-24', start: '1', copies: '1', shiftX: '0', shiftY: '0', code: '' } as const;
