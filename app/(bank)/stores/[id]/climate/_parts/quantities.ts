import type { SeriesSpan } from '@/lib/server/queries/climate-series';
import type { StoreClimatePage } from '@/lib/server/queries/store-climate';

/** What was read in a span, on the panel's own scale. */
export interface Band {
  fromEpochSeconds: number;
  toEpochSeconds: number;
  lowest: number;
  mean: number;
  highest: number;
}

/** What a panel of the picture shows: temperature in degrees C, or humidity in percent. */
export interface Quantity {
  key: 'temperature' | 'humidity';
  name: string;
  unit: string;
  bands: Band[];
  targets: { fromDay: number; toDay: number; value: number; tolerance: number }[];
}

/** The panels: humidity only where it was read or is meant to be something. */
export function quantities(page: StoreClimatePage): Quantity[] {
  const humidity: Quantity = {
    key: 'humidity',
    name: 'Relative humidity',
    unit: '%',
    bands: page.spans.flatMap(humidityBand),
    targets: page.parts.flatMap(({ fromDay, toDay, target: { relativeHumidity } }) =>
      relativeHumidity === null
        ? []
        : [{ fromDay, toDay, value: 100 * relativeHumidity, tolerance: 100 * page.tolerance.relativeHumidity }],
    ),
  };
  return [
    {
      key: 'temperature',
      name: 'Temperature',
      unit: '°C',
      bands: page.spans.map((span) => ({
        ...timesOf(span),
        lowest: span.lowestTemperatureC,
        mean: span.meanTemperatureC,
        highest: span.highestTemperatureC,
      })),
      targets: page.parts.map(({ fromDay, toDay, target }) => ({
        fromDay,
        toDay,
        value: target.temperatureC,
        tolerance: page.tolerance.temperatureC,
      })),
    },
    ...(humidity.bands.length > 0 || humidity.targets.length > 0 ? [humidity] : []),
  ];
}

const timesOf = ({ fromEpochSeconds, toEpochSeconds }: SeriesSpan) => ({ fromEpochSeconds, toEpochSeconds });

function humidityBand(span: SeriesSpan): Band[] {
  const { lowestHumidity, meanHumidity, highestHumidity } = span;
  if (lowestHumidity === null || meanHumidity === null || highestHumidity === null) return [];
  return [{ ...timesOf(span), lowest: 100 * lowestHumidity, mean: 100 * meanHumidity, highest: 100 * highestHumidity }];
}
