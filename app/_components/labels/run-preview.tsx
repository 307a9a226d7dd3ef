import { Pager } from '@/app/_components/list/pager';
import { formatCount } from '@/app/_format/figures';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import { type LabelRun, pageOfRun, pagesOf, remarksOn } from '@/lib/server/labels/print-run';
import { labelsHref, readLabelsAddress } from './labels-address';
import { PagePreview } from './page-preview';
import { RunRemarksList } from './run-remarks';

/** A page of the run as it will be printed, and what will not stand on it as it should. */
export function RunPreview({ path, address, run }: { path: string; address: Address; run: LabelRun }) {
  const { sheet, page: listPage } = readLabelsAddress(address);
  const pages = pagesOf(run);
  const page = Math.min(sheet, pages);
  const laid = pageOfRun(run, page - 1);
  const labels = run.texts.length * run.run.copies;
  const unit = run.format.kind === 'roll' ? 'label' : 'sheet';
  if (!laid.ok) return <RunRemarksList remarks={{ ...remarksOn(run), refused: laid }} labels={labels} />;
  return (
    <>
      <RunRemarksList remarks={remarksOn(run)} labels={labels} />
      <p className="quiet">
        {formatCount(labels)} {labels === 1 ? 'label' : 'labels'} on {formatCount(pages)}{' '}
        {run.format.kind === 'roll' ? 'pieces of the roll' : pages === 1 ? 'sheet' : 'sheets'}
      </p>
      <PagePreview
        format={run.format}
        page={laid.page}
        called={`Preview of ${unit} ${page} of ${pages}: ${laid.page.labels.length} labels`}
      />
      <Pager
        label="Pages of the preview"
        page={page}
        pages={pages}
        href={(next) => labelsHref(address, { page: listPage, sheet: next }, path)}
      />
    </>
  );
}
