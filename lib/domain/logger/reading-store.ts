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

/** Readings in a block: columns grow by blocks, so that nothing is copied but once, at the end. */
const BLOCK = 65_536;

/** Checked in tests/domain/logger/read-logger.test.ts and round-trip.test.ts */
export function readingStore(): ReadingStore {
  const blocks: Block[] = [];
  let block = EMPTY;
  let filled = BLOCK;
  let last = Number.NEGATIVE_INFINITY;
  let isInOrder = true;

  return {
    add(instant, temperatureC, relativeHumidity, line) {
      if (filled === BLOCK) {
        block = newBlock();
        blocks.push(block);
        filled = 0;
      }
      if (instant <= last) isInOrder = false;
      last = instant;
      block.at[filled] = instant;
      block.temperature[filled] = temperatureC;
      block.humidity[filled] = relativeHumidity;
      block.lines[filled] = line;
      filled += 1;
    },
    inOrderOfTime(onDouble) {
      const count = blocks.length === 0 ? 0 : (blocks.length - 1) * BLOCK + filled;
      const at = joined(blocks, 'at', new Float64Array(count));
      const temperature = joined(blocks, 'temperature', new Float64Array(count));
      const humidity = joined(blocks, 'humidity', new Float64Array(count));
      const lines = joined(blocks, 'lines', new Uint32Array(count));
      if (isInOrder) return columns(at, temperature, humidity, lines);
      const order = Uint32Array.from({ length: count }, (_, index) => index);
      order.sort((one, other) => (at[one] as number) - (at[other] as number) || one - other);
      const kept: number[] = [];
      for (const index of order) {
        const before = kept.at(-1);
        if (before === undefined || at[before] !== at[index]) {
          kept.push(index);
          continue;
        }
        const same = temperature[before] === temperature[index] && Object.is(humidity[before], humidity[index]);
        const other = `${temperature[index]} °C beside ${temperature[before]} °C on line ${lines[before]}`;
        onDouble(
          same ? 'same-again' : 'same-time-other-value',
          lines[index] as number,
          same ? `as line ${lines[before]}` : other,
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

interface Block {
  at: Float64Array;
  temperature: Float64Array;
  humidity: Float64Array;
  lines: Uint32Array;
}

const newBlock = (): Block => ({
  at: new Float64Array(BLOCK),
  temperature: new Float64Array(BLOCK),
  humidity: new Float64Array(BLOCK),
  lines: new Uint32Array(BLOCK),
});

const EMPTY: Block = {
  at: new Float64Array(0),
  temperature: new Float64Array(0),
  humidity: new Float64Array(0),
  lines: new Uint32Array(0),
};

function joined<Column extends Float64Array | Uint32Array>(
  blocks: readonly Block[],
  name: keyof Block,
  into: Column,
): Column {
  blocks.forEach((block, index) => {
    const room = into.length - index * BLOCK;
    into.set(room < BLOCK ? block[name].subarray(0, room) : block[name], index * BLOCK);
  });
  return into;
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
