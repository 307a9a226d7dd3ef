/** Input of the commands about label formats. Lengths in mm. */
import { z } from 'zod';
import { completeFormat } from '../domain/labels/complete-format';
import { formatProblems, LABEL_MM, LABELS_ACROSS, MARGIN_MM, PAGE_MM } from '../domain/labels/format-problems';
import { CODE_KIND_KEYS, LABEL_KIND_KEYS } from '../domain/labels/label-format';
import { choice, idOf, versionField } from './choice-field';
import { countBetween, numberBetween, optionalField, shortText } from './field-schemas';

const page = numberBetween(PAGE_MM, 'mm');
const label = numberBetween(LABEL_MM, 'mm');
const margin = numberBetween(MARGIN_MM, 'mm');

const formatFields = {
  name: shortText,
  kind: choice(LABEL_KIND_KEYS, 'kind of paper'),
  labelWidthMm: label,
  labelHeightMm: label,
  /** of a sheet; a roll's page is its label */
  pageWidthMm: optionalField(page),
  pageHeightMm: optionalField(page),
  columns: optionalField(countBetween(LABELS_ACROSS, 'columns')),
  rows: optionalField(countBetween(LABELS_ACROSS, 'rows')),
  marginLeftMm: optionalField(margin),
  marginTopMm: optionalField(margin),
  /** left empty: labels stand close together */
  pitchXMm: optionalField(label),
  pitchYMm: optionalField(label),
  symbol: choice(CODE_KIND_KEYS, 'code'),
};

type FormatFields = z.output<z.ZodObject<typeof formatFields>>;

const whole = ({ symbol, ...given }: FormatFields) => completeFormat({ ...given, code: symbol });

function checkedFormat<Fields extends FormatFields>(fields: Fields, context: z.RefinementCtx<Fields>) {
  for (const { field, message } of formatProblems(whole(fields)))
    context.addIssue({ code: 'custom', path: [field], message });
}

export const createLabelFormatSchema = z
  .object(formatFields)
  .superRefine(checkedFormat)
  .transform((fields) => ({ name: fields.name, ...whole(fields) }));

export const updateLabelFormatSchema = z
  .object({ id: idOf('format'), version: versionField, ...formatFields })
  .superRefine(checkedFormat)
  .transform(({ id, version, ...fields }) => ({ id, version, name: fields.name, ...whole(fields) }));

export const deleteLabelFormatSchema = z.object({ id: idOf('format'), version: versionField });
