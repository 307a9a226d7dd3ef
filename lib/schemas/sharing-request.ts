/** Input of the commands about requests: somebody asks for seed, lines are chosen, and it is sent or turned down. */
import { z } from 'zod';
import { RECIPIENT_KIND_KEYS } from '../domain/stock/recipient-kinds';
import { choice, idOf, tickBox, versionField } from './choice-field';
import { longText, lotNumber, optionalField, pastOrTodayDate, positiveSeedCount, shortText } from './field-schemas';

/** Lines of one request; a longer one is better cut in two parcels. */
const MOST_LINES = 100;

const requestFields = (today: string) => ({
  recipient: shortText,
  recipientKind: choice(RECIPIENT_KIND_KEYS, 'kind of recipient'),
  contact: optionalField(shortText),
  purpose: optionalField(shortText),
  /** left empty: today, or as it was */
  askedOn: optionalField(pastOrTodayDate(today)),
  notes: optionalField(longText),
});

/** @param today  'YYYY-MM-DD' at the bank */
export const createRequestSchema = (today: string) => z.object(requestFields(today));

/** @param today  'YYYY-MM-DD' at the bank */
export const updateRequestSchema = (today: string) =>
  z.object({ id: idOf('request'), version: versionField, ...requestFields(today) });

export const addRequestLineSchema = z.object({
  requestId: idOf('request'),
  /** its number, from the jar or the list */
  lot: lotNumber,
  /** left empty: enough for a small planting */
  seeds: optionalField(positiveSeedCount),
  note: optionalField(shortText),
});

/** Lines that are left out stay as they are: somebody else may have added them meanwhile. */
export const setRequestLinesSchema = z.object({
  requestId: idOf('request'),
  version: versionField,
  lines: z
    .array(
      z.object({
        id: idOf('line'),
        packetId: idOf('packet'),
        seeds: positiveSeedCount,
        note: optionalField(shortText),
        remove: tickBox,
      }),
    )
    .max(MOST_LINES, `Change at most ${MOST_LINES} lines at once.`)
    .default([]),
});

export const HOW_MEASURED = ['counted', 'weighed'] as const;

/** By line: what stands in the form under 'terms.<id of the line>'. */
const byLine = <Schema extends z.ZodType>(schema: Schema) => z.record(z.string().max(100), schema).default({});

/** @param today  'YYYY-MM-DD' at the bank */
export const sendRequestSchema = (today: string) =>
  z.object({
    requestId: idOf('request'),
    version: versionField,
    /** left empty: today */
    on: optionalField(pastOrTodayDate(today)),
    measured: choice(HOW_MEASURED, 'way in which the seed was measured'),
    /** ticked for a line on terms, and for treated seed */
    terms: byLine(tickBox),
    treated: byLine(tickBox),
    /** why a line goes though too little is kept */
    overrule: byLine(optionalField(shortText)),
  });

/** @param today  'YYYY-MM-DD' at the bank */
export const turnDownRequestSchema = (today: string) =>
  z.object({
    requestId: idOf('request'),
    version: versionField,
    /** left empty: today */
    on: optionalField(pastOrTodayDate(today)),
    reason: shortText,
  });
