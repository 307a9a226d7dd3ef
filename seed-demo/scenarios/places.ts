/** The ways in which the island usually puts seed away. */
import type { PlaceStory } from './story';

export const inFreezer = (moisturePercent: number): PlaceStory => ({
  store: 'freezer',
  container: 'foil-pouch',
  moisturePercent,
});
export const inFridgeTube = (moisturePercent: number): PlaceStory => ({
  store: 'fridge-top',
  container: 'screw-cap-tube',
  moisturePercent,
});
/** A lid that snaps is not a seal: the seed follows the fridge's air. */
export const IN_FRIDGE_BOX: PlaceStory = { store: 'fridge-bottom', container: 'plastic-box' };
export const inPantryJar = (moisturePercent: number): PlaceStory => ({
  store: 'pantry',
  container: 'glass-jar',
  moisturePercent,
});
export const IN_PANTRY_ENVELOPE: PlaceStory = { store: 'pantry', container: 'paper-envelope' };
export const IN_LOFT_ENVELOPE: PlaceStory = { store: 'loft', container: 'paper-envelope' };
