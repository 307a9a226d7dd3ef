/** Where Brannasay keeps its seed: the old schoolhouse on the quay, and a partner bank across the sound. */
import type { StoreStory } from './story';

/** The summer in which the fridge stood warm with nobody noticing: three harvests ago. */
export const FRIDGE_FAILURE = { season: 3, from: '07-02', days: 41, temperatureC: 23, relativeHumidity: 0.83 } as const;

export const STORES: readonly StoreStory[] = [
  {
    key: 'freezer',
    name: 'Chest freezer',
    kind: 'freezer',
    targetTemperatureC: -18,
    notes: 'In the old dairy. Warm every pouch for a day, closed, before it is opened.',
    climate: {
      everyHours: 3,
      yearsLogged: 4,
      temperature: { mean: -18.2, season: 0.3, hourly: 0.2, wander: 0.6 },
      humidity: null,
      mishaps: [{ season: 2, from: '01-18', days: 2, temperatureC: 2, relativeHumidity: 0.7 }],
      gaps: [{ season: 1, from: '05-03', days: 19 }],
    },
  },
  {
    key: 'fridge',
    name: 'Fridge',
    kind: 'fridge',
    targetTemperatureC: 4,
    targetHumidityPercent: 42,
    notes: `Stood warm for six weeks in the summer of the failed thermostat; it has had an alarm since.`,
    climate: {
      everyHours: 1,
      yearsLogged: 4,
      temperature: { mean: 4.1, season: 0.4, hourly: 0.2, wander: 0.5 },
      humidity: { mean: 0.42, season: 0.03, wander: 0.04 },
      mishaps: [FRIDGE_FAILURE],
      gaps: [{ season: 2, from: '10-09', days: 6 }],
    },
  },
  {
    key: 'fridge-top',
    name: 'Fridge, top shelf',
    kind: 'shelf',
    inside: 'fridge',
    capacityPackets: 120,
  },
  {
    key: 'fridge-bottom',
    name: 'Fridge, bottom shelf',
    kind: 'shelf',
    inside: 'fridge',
    capacityPackets: 120,
  },
  {
    key: 'pantry',
    name: 'Cool pantry',
    kind: 'room',
    targetTemperatureC: 12,
    targetHumidityPercent: 55,
    notes: 'North wall, stone shelves.',
    climate: {
      everyHours: 2,
      yearsLogged: 4,
      temperature: { mean: 11.6, season: 2.8, hourly: 0.4, wander: 0.8 },
      humidity: { mean: 0.56, season: 0.03, wander: 0.05 },
      mishaps: [],
      gaps: [
        { season: 3, from: '11-20', days: 9 },
        { season: 1, from: '02-11', days: 4 },
      ],
    },
  },
  {
    key: 'drying-cupboard',
    name: 'Drying cupboard',
    kind: 'cabinet',
    targetTemperatureC: 15,
    targetHumidityPercent: 15,
    climate: {
      everyHours: 3,
      yearsLogged: 2,
      temperature: { mean: 15.1, season: 0.5, hourly: 0.2, wander: 0.4 },
      humidity: { mean: 0.16, season: 0.01, wander: 0.02 },
      mishaps: [],
      gaps: [],
    },
  },
  {
    key: 'loft',
    name: 'Boathouse loft',
    kind: 'room',
    targetTemperatureC: 11,
    targetHumidityPercent: 66,
    notes: 'Damp when the wind is in the west. Nothing new goes here.',
    climate: {
      everyHours: 1,
      yearsLogged: 3.5,
      temperature: { mean: 10.8, season: 4.6, hourly: 1.6, wander: 1.3 },
      humidity: { mean: 0.67, season: -0.03, wander: 0.06 },
      mishaps: [],
      gaps: [{ season: 1, from: '12-28', days: 12 }],
    },
  },
  {
    key: 'clover-box',
    name: 'Clover box',
    kind: 'box',
    inside: 'loft',
    movedInto: { store: 'pantry', season: 4, day: '04-20' },
    capacityPackets: 12,
    notes: 'An old biscuit box. It came down from the loft when somebody read the logger there.',
  },
  {
    key: 'partner',
    name: "Partner bank's freezer",
    kind: 'partner-bank',
    targetTemperatureC: -20,
    notes: 'Safety duplicates only, across the sound. A list comes back every January.',
  },
];
