'use client';

import {
  CheckField,
  DateField,
  HiddenField,
  NumberField,
  type Option,
  SelectField,
  TextAreaField,
  TextField,
} from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { MOISTURE_METHODS } from '@/lib/domain/moisture/moisture-methods';
import type { OvenDish } from '@/lib/domain/moisture/oven-dishes';
import { recordMoisture } from '../actions';
import { DishFields } from './dish-fields';

export type MoistureWay = 'oven' | 'meter' | 'air';

export interface MoistureTestFormProps {
  lotNumber: string;
  today: string;
  way: MoistureWay;
  packets: Option[];
  /** what stands in the boxes of a correction */
  correcting?: {
    id: string;
    number: string;
    testedOn: string;
    method: string;
    packetId: string | null;
    moisturePercent: number;
    relativeHumidity: number | null;
    temperatureC: number | null;
    notes: string | null;
    dishes: OvenDish[];
  };
}

const OVEN_OPTIONS = MOISTURE_METHODS.filter(({ oven }) => oven).map(({ key, label }) => ({ value: key, label }));
/** dishes asked for: two are needed, a third may be left out */
const DISHES_ASKED = 3;
const DISHES_NEEDED = 2;

/** One form for a moisture test and for its correction: only the fields of the way it was found. */
export function MoistureTestForm({ lotNumber, today, way, packets, correcting }: MoistureTestFormProps) {
  return (
    <Form action={recordMoisture} className="sheet grid gap-6">
      {correcting ? (
        <>
          <HiddenField name="correctsId" value={correcting.id} />
          <TextField
            name="correctionReason"
            label={`What was wrong with ${correcting.number}?`}
            hint="Stays beside the test, so that nobody wonders later."
          />
          <TextField name="lot" label="Lot" defaultValue={lotNumber} className="max-w-72" />
        </>
      ) : (
        <HiddenField name="lot" value={lotNumber} />
      )}
      <div className="grid gap-5 sm:grid-cols-2">
        <DateField name="testedOn" label="Tested on" max={today} defaultValue={correcting?.testedOn ?? today} />
        {way === 'oven' ? (
          <SelectField
            name="method"
            label="Oven"
            options={OVEN_OPTIONS}
            defaultValue={correcting?.method ?? OVEN_OPTIONS[0]?.value}
          />
        ) : (
          <HiddenField name="method" value={way} />
        )}
      </div>
      {way === 'oven' && <Dishes dishes={correcting?.dishes ?? []} />}
      {way === 'meter' && (
        <NumberField
          name="moisturePercent"
          label="The meter shows"
          hint="Percent of fresh weight."
          unit="%"
          className="max-w-72"
          defaultValue={correcting && correcting.method === 'meter' ? correcting.moisturePercent : undefined}
        />
      )}
      {way === 'air' && (
        <div className="grid gap-5 sm:grid-cols-2">
          <NumberField
            name="humidityPercent"
            label="Humidity over the seed"
            hint="In a closed jar, once it has stopped changing."
            unit="%"
            defaultValue={
              correcting?.relativeHumidity == null ? undefined : Math.round(correcting.relativeHumidity * 1000) / 10
            }
          />
          <NumberField
            name="temperatureC"
            label="Temperature there"
            hint="As the same instrument shows it."
            unit="°C"
            defaultValue={correcting?.temperatureC}
          />
        </div>
      )}
      {packets.length > 0 && (
        <div className="grid gap-3">
          <SelectField
            name="packetId"
            label="Seed came from"
            hint="What is found holds for this packet's sealed stay."
            options={packets}
            empty="no packet of this bank"
            defaultValue={correcting ? correcting.packetId : packets[0]?.value}
          />
          {correcting ? (
            <p className="label">Seed is not taken out of the ledger a second time.</p>
          ) : (
            <UsedSeed way={way} />
          )}
        </div>
      )}
      <TextAreaField name="notes" label="Notes" optional defaultValue={correcting?.notes} />
      <div>
        <SubmitButton>{correcting ? 'Save the correction' : 'Save the test'}</SubmitButton>
      </div>
    </Form>
  );
}

function Dishes({ dishes }: { dishes: OvenDish[] }) {
  return Array.from({ length: Math.max(DISHES_ASKED, dishes.length) }, (_, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: dishes have no name but their place
    <DishFields key={index} index={index} dish={dishes[index]} optional={index >= DISHES_NEEDED} />
  ));
}

/** The oven kills what it dries; a meter may grind; the air over seed costs none. */
function UsedSeed({ way }: { way: MoistureWay }) {
  return (
    <>
      <CheckField
        name="takeSeed"
        label="Take the seed that was used out of its ledger"
        hint={way === 'oven' ? 'Seed from the oven is dead: it never goes back.' : 'Only where it did not go back.'}
        checkedByDefault={way === 'oven'}
      />
      <div className="grid grid-cols-[1fr_9rem] items-end gap-3 sm:max-w-md">
        <NumberField
          name="amount"
          label="Seed used"
          hint={way === 'oven' ? 'Left empty: the fresh seed of the dishes.' : 'Where some was used up.'}
          optional
        />
        <SelectField
          name="unit"
          label="In"
          options={[
            { value: 'grams', label: 'grams' },
            { value: 'seeds', label: 'seeds' },
          ]}
        />
      </div>
    </>
  );
}
