import type { Chooser } from '../chooser';
import { openStores } from './bank-now';

const CONTAINERS = ['glass-jar', 'foil-pouch', 'paper-envelope', 'screw-cap-tube'] as const;

/** Where and how seed is put; the warnings are ticked away. */
export const placementFields = (choose: Chooser) => ({
  storeId: choose.one(openStores()) ?? '',
  container: choose.one(CONTAINERS),
  moisturePercent: choose.one(['5', '6,5', '8', '']),
  storeAnyway: 'on',
  overfill: 'on',
});

/** How it is packed, without where it lies. */
export function packingFields(choose: Chooser) {
  const { storeId: _nowhere, ...packing } = placementFields(choose);
  const seals = packing.container !== 'paper-envelope';
  return {
    ...packing,
    sealed: seals && choose.whole(0, 1) === 1 ? 'on' : undefined,
    desiccant: choose.one(['', '', 'silica-gel']),
  };
}
