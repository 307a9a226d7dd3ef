/** Each replicate on one line of weight, with the mean; what was left out is crossed. */
export function WeightStrip({
  weightsG,
  dropped,
  meanG,
}: {
  weightsG: readonly number[];
  dropped: readonly number[];
  meanG: number;
}) {
  const [low, high] = [Math.min(...weightsG), Math.max(...weightsG)];
  const room = (high - low || high) * 0.1;
  const from = low - room;
  const place = (weight: number) => `${(100 * (weight - from)) / (high + room - from)}%`;
  return (
    <div aria-hidden className="grid gap-1">
      <div className="relative h-9 border-x border-rule bg-sunk">
        <span className="absolute inset-y-0 border-l-2 border-dashed border-leaf" style={{ left: place(meanG) }} />
        {weightsG.map((weight, index) => (
          <span
            // biome-ignore lint/suspicious/noArrayIndexKey: replicates have no name but their place, and may weigh alike
            key={index}
            className={
              dropped.includes(weight)
                ? 'absolute top-1/2 -translate-1/2 font-bold text-madder'
                : 'absolute top-1/2 size-3 -translate-1/2 rounded-full border-2 border-ink bg-sheet'
            }
            style={{ left: place(weight) }}
          >
            {dropped.includes(weight) && '×'}
          </span>
        ))}
      </div>
      <p className="label">
        Each replicate by its weight, {low} to {high} g; dashed: the mean.{dropped.length > 0 && ' ×: left out.'}
      </p>
    </div>
  );
}
