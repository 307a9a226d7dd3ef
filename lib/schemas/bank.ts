import { z } from 'zod';
import { THRESHOLD_KINDS } from '../domain/regrow/threshold-kinds';
import { bankAddress } from './bank-address';
import { countBetween, optionalField, proportionFromPercent, shortText } from './field-schemas';

export const bankSchema = z.object({
  name: shortText,
  thresholdKind: z.enum(THRESHOLD_KINDS, { error: 'Choose one of the two.' }),
  thresholdValue: proportionFromPercent.refine(
    (value) => value >= 0.3 && value <= 0.99,
    'Write a percentage from 30 to 99.',
  ),
  sowingMonth: countBetween({ min: 1, max: 12 }, 'the month'),
  emergence: proportionFromPercent.refine((value) => value >= 0.05, 'Write a percentage from 5 to 100.'),
  assurance: proportionFromPercent.refine(
    (value) => value >= 0.5 && value <= 0.999,
    'Write a percentage from 50 to 99.9.',
  ),
  address: optionalField(bankAddress),
  version: countBetween({ min: 1, max: 1_000_000_000 }, 'the version'),
});
