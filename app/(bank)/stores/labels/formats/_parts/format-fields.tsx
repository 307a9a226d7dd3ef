import { NumberField, SelectField, TextField } from '@/app/_components/form/fields';
import { CODE_KINDS, LABEL_KINDS } from '@/lib/domain/labels/label-format';
import type { OwnFormat } from '@/lib/server/queries/label-formats';
import { LivePage } from './live-page';

const options = (kinds: readonly { key: string; label: string }[]) =>
  kinds.map(({ key, label }) => ({ value: key, label }));

/** What is asked of a label format; the page beside it is drawn as it is typed. */
export function FormatFields({ format }: { format?: OwnFormat }) {
  return (
    <div className="grid items-start gap-6 lg:grid-cols-[minmax(0,1fr)_minmax(0,20rem)]">
      <div className="grid gap-5 sm:grid-cols-2">
        <TextField
          name="name"
          label="Name"
          hint="As you will look for it: sheet for jars, roll in the seed room."
          defaultValue={format?.name}
          className="sm:col-span-2"
        />
        <SelectField
          name="kind"
          label="Kind of paper"
          defaultValue={format?.kind ?? 'sheet'}
          options={options(LABEL_KINDS)}
        />
        <SelectField name="symbol" label="Code" defaultValue={format?.code ?? 'qr'} options={options(CODE_KINDS)} />
        <NumberField name="labelWidthMm" label="Label width" unit="mm" defaultValue={format?.labelWidthMm} />
        <NumberField name="labelHeightMm" label="Label height" unit="mm" defaultValue={format?.labelHeightMm} />
        <fieldset className="grid gap-5 sm:col-span-2 sm:grid-cols-2">
          <legend className="mb-3 font-semibold">Of a sheet, not of a roll</legend>
          <NumberField
            name="pageWidthMm"
            label="Sheet width"
            hint="Left empty: A4, 210 mm."
            unit="mm"
            optional
            defaultValue={format?.pageWidthMm}
          />
          <NumberField
            name="pageHeightMm"
            label="Sheet height"
            hint="Left empty: A4, 297 mm."
            unit="mm"
            optional
            defaultValue={format?.pageHeightMm}
          />
          <NumberField name="columns" label="Labels across" whole optional defaultValue={format?.columns} />
          <NumberField name="rows" label="Labels down" whole optional defaultValue={format?.rows} />
          <NumberField
            name="marginLeftMm"
            label="Left margin"
            hint="Edge of the sheet to the first label."
            unit="mm"
            optional
            defaultValue={format?.marginLeftMm}
          />
          <NumberField
            name="marginTopMm"
            label="Upper margin"
            hint="Edge of the sheet to the first label."
            unit="mm"
            optional
            defaultValue={format?.marginTopMm}
          />
          <NumberField
            name="pitchXMm"
            label="Step to the right"
            hint="Left edge to left edge. Left empty: no gap."
            unit="mm"
            optional
            defaultValue={format?.pitchXMm}
          />
          <NumberField
            name="pitchYMm"
            label="Step down"
            hint="Upper edge to upper edge. Left empty: no gap."
            unit="mm"
            optional
            defaultValue={format?.pitchYMm}
          />
        </fieldset>
      </div>
      <LivePage format={format ?? null} />
    </div>
  );
}
