/** Input of the commands about stores. */
import { z } from 'zod';
import { STORE_KIND_KEYS } from '../domain/stock/store-kinds';
import { choice, idOf, versionField } from './choice-field';
import { longText, numberBetween, optionalField, percent, shortText } from './field-schemas';

/** degrees C: liquid nitrogen to a hot loft */
const STORE_TEMPERATURE_C = { min: -196, max: 60 } as const;

const storeFields = {
  name: shortText,
  kind: choice(STORE_KIND_KEYS, 'kind of store'),
  parentId: optionalField(idOf('store around it')),
  targetTemperatureC: numberBetween(STORE_TEMPERATURE_C, '°C'),
  /** typed as percent, kept as proportion 0-1 */
  targetHumidityPercent: optionalField(percent.transform((value) => value / 100)),
  notes: optionalField(longText),
};

export const createStoreSchema = z.object(storeFields);

export const updateStoreSchema = z.object({ id: idOf('store'), version: versionField, ...storeFields });
