'use client';

import { NumberField } from '@/app/_components/form/fields';
import type { OvenDish } from '@/lib/domain/moisture/oven-dishes';

interface Props {
  index: number;
  dish?: OvenDish | undefined;
  optional?: boolean;
}

/** The weights of one dish. Each dish may have been pre-dried by itself. */
export function DishFields({ index, dish, optional = false }: Props) {
  const name = (weight: keyof OvenDish) => `dishes.${index}.${weight}`;
  return (
    <fieldset className="grid gap-3">
      <legend className="mb-1 font-semibold">
        Dish {index + 1}
        {optional && <span className="quiet font-normal"> (optional)</span>}
      </legend>
      <div className="grid gap-3 sm:grid-cols-3">
        <NumberField name={name('dishG')} label="Dish and lid, empty" unit="g" defaultValue={dish?.dishG} />
        <NumberField name={name('dishAndFreshG')} label="With fresh seed" unit="g" defaultValue={dish?.dishAndFreshG} />
        <NumberField name={name('dishAndDryG')} label="With dried seed" unit="g" defaultValue={dish?.dishAndDryG} />
      </div>
      <details open={dish?.beforePreDryingG != null}>
        <summary className="min-h-11 cursor-pointer py-2">Pre-dried before the oven?</summary>
        <div className="grid gap-3 sm:grid-cols-3">
          <NumberField
            name={name('beforePreDryingG')}
            label="Seed before pre-drying"
            hint="Seed alone."
            unit="g"
            optional
            defaultValue={dish?.beforePreDryingG}
          />
          <NumberField
            name={name('afterPreDryingG')}
            label="After pre-drying"
            hint="The same seed."
            unit="g"
            optional
            defaultValue={dish?.afterPreDryingG}
          />
        </div>
      </details>
    </fieldset>
  );
}
