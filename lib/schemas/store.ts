/** Input of the commands about stores. */
import { z } from 'zod';
import { STORE_KIND_KEYS } from '../domain/stock/store-kinds';
import { choice, idOf, tickBox, versionField } from './choice-field';
import {
  countBetween,
  longText,
  numberBetween,
  optionalField,
  pastOrTodayDate,
  percent,
  shortText,
} from './field-schemas';

/** degrees C: liquid nitrogen to a hot loft */
const STORE_TEMPERATURE_C = { min: -196, max: 60 } as const;
/** A walk-in freezer of envelopes. */
const CAPACITY_PACKETS = { min: 1, max: 1_000_000 } as const;

const storeFields = {
  name: shortText,
  kind: choice(STORE_KIND_KEYS, 'kind of store'),
  /** ticked: its target is that of the store around it, and the two fields below do not count */
  inheritsTarget: tickBox,
  targetTemperatureC: optionalField(numberBetween(STORE_TEMPERATURE_C, '°C')),
  /** typed as percent, kept as proportion 0-1 */
  targetHumidityPercent: optionalField(percent.transform((value) => value / 100)),
  capacityPackets: optionalField(countBetween(CAPACITY_PACKETS, 'packets')),
  notes: optionalField(longText),
};

interface Targets {
  inheritsTarget: boolean;
  targetTemperatureC?: number | undefined;
}
const hasTarget = (store: Targets) => store.inheritsTarget || store.targetTemperatureC !== undefined;
const TARGET_NEEDED = {
  path: ['targetTemperatureC'],
  message: 'Fill this in, or tick that it is as the store around it.',
};

export const createStoreSchema = z
  .object({ ...storeFields, parentId: optionalField(idOf('store around it')) })
  .refine(hasTarget, TARGET_NEEDED)
  .refine((store) => !store.inheritsTarget || store.parentId !== undefined, {
    path: ['inheritsTarget'],
    message: 'Say what it lies in, or untick this and fill in a temperature.',
  });

/** @param today  'YYYY-MM-DD' at the bank */
export const updateStoreSchema = (today: string) =>
  z
    .object({
      id: idOf('store'),
      version: versionField,
      ...storeFields,
      /** since when the targets are so; left empty: what was written was wrong */
      setSince: optionalField(pastOrTodayDate(today)),
      closedOn: optionalField(pastOrTodayDate(today)),
    })
    .refine(hasTarget, TARGET_NEEDED);

/** @param today  'YYYY-MM-DD' at the bank */
export const moveStoreSchema = (today: string) =>
  z.object({
    id: idOf('store'),
    version: versionField,
    /** left empty: it stands by itself */
    parentId: optionalField(idOf('store around it')),
    /** left empty: today */
    from: optionalField(pastOrTodayDate(today)),
    /** ticked: it never stood where it was said to stand */
    correction: tickBox,
    /** ticked by somebody who has read the warnings */
    moveAnyway: tickBox,
  });
