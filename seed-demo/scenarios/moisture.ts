/** What Brannasay measured of its seed's moisture, and what it dried. */
import type { MoistureMethodKey } from '../../lib/domain/moisture/moisture-methods';

export interface MoistureStory {
  accession: string;
  /** its lots counted from the oldest; the sample came from the first packet */
  lot: number;
  /** before today */
  daysAgo: number;
  method: MoistureMethodKey;
  /** grams: dish and lid, with fresh seed, with dried seed */
  dishes?: readonly (readonly [number, number, number])[];
  moisturePercent?: number;
  humidityPercent?: number;
  temperatureC?: number;
  notes?: string;
}

export const MOISTURE_STORIES: readonly MoistureStory[] = [
  {
    accession: 'Wind-cut',
    lot: 1,
    daysAgo: 200,
    method: 'oven-low',
    dishes: [
      [20.114, 25.236, 24.967],
      [19.874, 25.051, 24.783],
    ],
  },
  {
    accession: 'Ferry Purple',
    lot: 1,
    daysAgo: 90,
    method: 'oven-low',
    dishes: [
      [20.02, 24.981, 24.667],
      [21.347, 26.29, 25.996],
    ],
    notes: 'The second dish stood open on the bench for a while.',
  },
  // The rubber of this jar is old: it was packed at 10.2 %.
  { accession: 'Kirk Geo Early', lot: 2, daysAgo: 30, method: 'meter', moisturePercent: 12.1 },
  { accession: 'Sandwater Amber', lot: 1, daysAgo: 12, method: 'air', humidityPercent: 24, temperatureC: 18 },
];

export interface DryingStory {
  accession: string;
  lot: number;
  dryingWith: string;
  startMoisturePercent: number;
  targetMoisturePercent: number;
  tareG: number;
  /** days before today, time of day, grams with the tray; the first starts the run */
  weighings: readonly (readonly [number, string, number])[];
  /** days before today; left out: it is still drying */
  endedDaysAgo?: number;
}

export const DRYING_STORIES: readonly DryingStory[] = [
  {
    accession: 'Hill Field',
    lot: 1,
    dryingWith: 'silica gel',
    startMoisturePercent: 12.6,
    targetMoisturePercent: 7,
    tareG: 210,
    weighings: [
      [66, '09:00', 598.4],
      [65, '09:00', 586.9],
      [64, '09:00', 579.6],
      [62, '18:00', 574.5],
    ],
    endedDaysAgo: 62,
  },
  {
    accession: 'Ramsgarth Six-row',
    lot: 5,
    dryingWith: 'silica gel',
    startMoisturePercent: 9.6,
    targetMoisturePercent: 6,
    tareG: 210,
    weighings: [
      [3, '09:00', 713],
      [3, '18:00', 709.8],
      [2, '09:00', 705.7],
      [2, '18:00', 703.4],
      [1, '18:00', 699.1],
    ],
  },
];
