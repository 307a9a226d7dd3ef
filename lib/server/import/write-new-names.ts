import 'server-only';
import { newId } from '../new-id';
import type { BulkWriter } from './bulk-writer';

/** A crop that the reference does not know: no constants, so no forecast until the steward chooses some. */
export function writeNewCrop(writer: BulkWriter, name: string): void {
  const id = newId();
  writer.insert('Crop', {
    id,
    name,
    scientificName: 'not known',
    family: 'not known',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: 'unknown',
    constantsBorrowed: 1,
    notes: 'Made by an import: fill in what is known of it.',
  });
  writer.audit('crop', id, `Added crop ${name} with an import`);
}

/** A store known by its name only: kind and target are guessed from the name, and the note says so. */
export function writeNewStore(writer: BulkWriter, name: string): void {
  const id = newId();
  const guess = guessStore(name);
  writer.insert('Store', {
    id,
    name,
    kind: guess.kind,
    targetTemperatureC: guess.temperatureC,
    targetRelativeHumidity: guess.relativeHumidity,
    notes: 'Made by an import: its kind, temperature and humidity are guessed from the name. Check them.',
  });
  writer.audit('store', id, `Added store ${name} with an import`);
}

const GUESSES = [
  { words: /freez|frost|gefrier|congel/i, kind: 'freezer', temperatureC: -18, relativeHumidity: null },
  { words: /fridge|refrig|kühl|kuehl|frigo|nevera/i, kind: 'fridge', temperatureC: 5, relativeHumidity: 0.5 },
  { words: /cellar|keller|cave|sótano|pantry|larder/i, kind: 'room', temperatureC: 12, relativeHumidity: 0.6 },
] as const;
const AN_ORDINARY_ROOM = { kind: 'room', temperatureC: 20, relativeHumidity: 0.5 } as const;

function guessStore(name: string) {
  return GUESSES.find(({ words }) => words.test(name)) ?? AN_ORDINARY_ROOM;
}
