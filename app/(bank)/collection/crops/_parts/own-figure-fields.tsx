import type { ReactNode } from 'react';
import { CheckField, NumberField, SelectField, TextAreaField, TextField } from '@/app/_components/form/fields';
import { MONTH_NAMES } from '@/app/_format/figures';

const percentOf = (proportion: number | null | undefined) =>
  proportion == null ? undefined : Number((proportion * 100).toPrecision(6));

interface Props {
  constants: { id: string; name: string; species: string }[];
  crop?: {
    plantsNeeded: number | null;
    thresholdKind: string | null;
    thresholdValue: number | null;
    sowingMonth: number | null;
    emergence: number | null;
    longevityConstantsId: string | null;
    constantsBorrowed: boolean;
    borrowedBecause: string | null;
    priorInitialMean: number | null;
    priorInitialSd: number | null;
    priorLogRateMean: number | null;
    priorLogRateSd: number | null;
    notes: string | null;
  };
}

/** The bank's own figures for a crop. Left empty, the reference and the bank's general rules decide. */
export function OwnFigureFields({ constants, crop }: Props) {
  return (
    <>
      <Group title="Growing it again">
        <NumberField
          whole
          name="plantsNeeded"
          label="Plants needed"
          hint="Enough to keep the variety's variation."
          optional
          defaultValue={crop?.plantsNeeded}
        />
        <NumberField
          name="emergencePercent"
          label="Emergence"
          hint="Share of living seed that gives a plant in the bed."
          unit="%"
          optional
          defaultValue={percentOf(crop?.emergence)}
        />
        <SelectField
          name="sowingMonth"
          label="Sown in"
          optional
          empty="as the bank does"
          options={MONTH_NAMES.map((month, index) => ({ value: String(index + 1), label: month }))}
          defaultValue={crop?.sowingMonth}
        />
      </Group>
      <Group title="The line below which it is grown again">
        <SelectField
          name="thresholdKind"
          label="Reckoned as"
          optional
          empty="as the bank does"
          options={[
            { value: 'fraction-of-initial', label: 'share of what the lot began with' },
            { value: 'absolute', label: 'share of seed alive' },
          ]}
          defaultValue={crop?.thresholdKind}
        />
        <NumberField
          name="thresholdPercent"
          label="Line"
          hint="The standard is 85 % of what the lot began with."
          unit="%"
          optional
          defaultValue={percentOf(crop?.thresholdValue)}
        />
      </Group>
      <Group title="How its seed ages">
        <SelectField
          name="longevityConstantsId"
          label="Longevity constants"
          optional
          empty="none: no forecast"
          options={constants.map(({ id, name, species }) => ({ value: id, label: `${name} (${species})` }))}
          defaultValue={crop?.longevityConstantsId}
          className="sm:col-span-2"
        />
        <CheckField
          name="constantsBorrowed"
          label="Borrowed from another species"
          hint="Forecasts are wider for it."
          checkedByDefault={crop?.constantsBorrowed ?? true}
        />
        <TextField
          name="borrowedBecause"
          label="Why these stand in"
          hint="For example: same genus."
          optional
          defaultValue={crop?.borrowedBecause}
        />
      </Group>
      <details>
        <summary className="min-h-11 cursor-pointer content-center font-semibold">
          What to expect of a lot before any test
        </summary>
        <p className="label max-w-prose">
          In probits and logarithms; the methods' pages explain them. Empty: the standard ones, wide for borrowed
          constants.
        </p>
        <div className="mt-3 grid gap-5 sm:grid-cols-2">
          <NumberField
            name="priorInitialMean"
            label="Initial viability, middle"
            unit="probits"
            optional
            defaultValue={crop?.priorInitialMean}
          />
          <NumberField
            name="priorInitialSd"
            label="Initial viability, spread"
            unit="probits"
            optional
            defaultValue={crop?.priorInitialSd}
          />
          <NumberField
            name="priorLogRateMean"
            label="Rate of ageing, middle"
            unit="log"
            optional
            defaultValue={crop?.priorLogRateMean}
          />
          <NumberField
            name="priorLogRateSd"
            label="Rate of ageing, spread"
            unit="log"
            optional
            defaultValue={crop?.priorLogRateSd}
          />
        </div>
      </details>
      <TextAreaField name="notes" label="Notes" optional defaultValue={crop?.notes} />
    </>
  );
}

function Group({ title, children }: { title: string; children: ReactNode }) {
  return (
    <fieldset className="grid gap-5 border-t border-rule pt-4 sm:grid-cols-2">
      <legend className="pr-3 font-semibold">{title}</legend>
      {children}
    </fieldset>
  );
}
