/** How a figure is known and where it is from; addresses break anywhere so that they stay in their column. */
export function Source({ mark, source }: { mark: string; source: string }) {
  return (
    <span className="wrap-anywhere text-sm">
      <b>{mark}</b> <span className="quiet">{source}</span>
    </span>
  );
}
