/** Readings as columns of plain numbers, growing as they come, and put into the order of time at the end. */

export interface TimedReadings {
  atEpochSeconds: Float64Array;
  temperatureC: Float64Array;
  /** 0-1; NaN where there is none */
  relativeHumidity: Float64Array;
  /** line of the file on which each stands */
  lines: Uint32Array;
  without(indexes: ReadonlySet<number>): TimedReadings;
}

export interface ReadingStore {
  add(atEpochSeconds: number, temperatureC: number, relativeHumidity: number, line: number): void;
  /**
   * @param onDouble  told of each reading that is left out because another of the same instant came first
   */
  inOrderOfTime(
    onDouble: (kind: 'same-again' | 'same-time-other-value', line: number, text: string) => void,
  ): TimedReadings;
}

const ROOM_AT_FIRST = 4096;

/** Checked in tests/domain/logger/read-logger.test.ts and round-trip.test.ts */
export function readingStore(): ReadingStore {
  let room = ROOM_AT_FIRST;
  let count = 0;
  let at = new Float64Array(room);
  let temperature = new Float64Array(room);
  let humidity = new Float64Array(room);
  let lines = new Uint32Array(room);
  let isInOrder = true;

  function grow(): void {
    room *= 2;
    const wider = <Column extends Float64Array | Uint32Array>(column: Column, into: Column): Column => {
      into.set(column);
      return into;
    };
    at = wider(at, new Float64Array(room));
    temperature = wider(temperature, new Float64Array(room));
    humidity = wider(humidity, new Float64Array(room));
    lines = wider(lines, new Uint32Array(room));
  }

  return {
    add(instant, temperatureC, relativeHumidity, line) {
      if (count === room) grow();
      if (count > 0 && instant <= (at[count - 1] as number)) isInOrder = false;
      at[count] = instant;
      temperature[count] = temperatureC;
      humidity[count] = relativeHumidity;
      lines[count] = line;
      count += 1;
    },
    inOrderOfTime(onDouble) {
      if (isInOrder) {
        return columns(
          at.slice(0, count),
          temperature.slice(0, count),
          humidity.slice(0, count),
          lines.slice(0, count),
        );
      }
      const order = Uint32Array.from({ length: count }, (_, index) => index);
      order.sort((one, other) => (at[one] as number) - (at[other] as number) || one - other);
      const kept: number[] = [];
      for (const index of order) {
        const last = kept.at(-1);
        if (last === undefined || at[last] !== at[index]) {
          kept.push(index);
          continue;
        }
        const same = temperature[last] === temperature[index] && Object.is(humidity[last], humidity[index]);
        const other = `${temperature[index]} °C beside ${temperature[last]} °C on line ${lines[last]}`;
        onDouble(
          same ? 'same-again' : 'same-time-other-value',
          lines[index] as number,
          same ? `as line ${lines[last]}` : other,
        );
      }
      return columns(
        Float64Array.from(kept, (index) => at[index] as number),
        Float64Array.from(kept, (index) => temperature[index] as number),
        Float64Array.from(kept, (index) => humidity[index] as number),
        Uint32Array.from(kept, (index) => lines[index] as number),
      );
    },
  };
}

function columns(
  atEpochSeconds: Float64Array,
  temperatureC: Float64Array,
  relativeHumidity: Float64Array,
  lines: Uint32Array,
): TimedReadings {
  return {
    atEpochSeconds,
    temperatureC,
    relativeHumidity,
    lines,
    without: (indexes) => {
      const stays = (_: number, index: number) => !indexes.has(index);
      return columns(
        atEpochSeconds.filter(stays),
        temperatureC.filter(stays),
        relativeHumidity.filter(stays),
        lines.filter(stays),
      );
    },
  };
}
