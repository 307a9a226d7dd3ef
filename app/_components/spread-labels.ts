/**
 * Where labels stand so that none lies on another: as near to where they belong as that allows, in the same order.
 *
 * @param wanted  pixels from the top at which each label's middle belongs, in any order
 * @param room    height: pixels that a label takes; from, to: the first and last pixel that its middle may stand on
 * @returns pixels in the order of `wanted`; the sum of squared shifts is least, but where the ends of the room push
 *   labels in. More labels than fit begin at the top and go on below the room
 * Checked in tests/app/_components/spread-labels.test.ts
 */
export function spreadLabels(
  wanted: readonly number[],
  { height, from, to }: { height: number; from: number; to: number },
): number[] {
  const order = wanted.map((_, index) => index).sort((one, other) => (wanted[one] ?? 0) - (wanted[other] ?? 0));
  // Labels that would touch form a block, which stands where its labels belong on average.
  const blocks: { first: number; count: number; middle: number }[] = [];
  for (const [rank, index] of order.entries()) {
    let block = { first: rank, count: 1, middle: wanted[index] ?? 0 };
    for (
      let above = blocks.at(-1);
      above && topOf(block, height) - bottomOf(above, height) < 0;
      above = blocks.at(-1)
    ) {
      blocks.pop();
      const count = above.count + block.count;
      const middle = (above.middle * above.count + block.middle * block.count) / count;
      block = { first: above.first, count, middle };
    }
    blocks.push(block);
  }
  const placed = new Array<number>(wanted.length).fill(0);
  for (const { first, count, middle } of blocks) {
    for (let rank = first; rank < first + count; rank++) {
      placed[order[rank] ?? 0] = middle + (rank - first - (count - 1) / 2) * height;
    }
  }
  pushInside(placed, order, { height, from, to });
  return placed;
}

type Block = { count: number; middle: number };
const topOf = ({ count, middle }: Block, height: number) => middle - (count * height) / 2;
const bottomOf = ({ count, middle }: Block, height: number) => middle + (count * height) / 2;

/** First up from the foot, then down from the top, each label by no more than it must. */
function pushInside(
  placed: number[],
  order: readonly number[],
  { height, from, to }: { height: number; from: number; to: number },
): void {
  let lowest = to;
  for (const index of [...order].reverse()) {
    placed[index] = Math.min(placed[index] ?? 0, lowest);
    lowest = (placed[index] ?? 0) - height;
  }
  let highest = from;
  for (const index of order) {
    placed[index] = Math.max(placed[index] ?? 0, highest);
    highest = (placed[index] ?? 0) + height;
  }
}
