import { CROP_NAMES } from '@/lib/schemas/calculators/crop-oil';

/** The crops of the reference, as a list to choose from. */
export const CROP_CHOICE = CROP_NAMES.map((name) => ({ value: name, label: name }));
