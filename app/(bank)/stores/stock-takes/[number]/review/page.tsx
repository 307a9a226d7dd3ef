import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { CheckField, HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { readParameter } from '@/app/_format/read-parameter';
import { stockTakePath } from '@/app/_format/stock-take-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { reviewLines } from '@/lib/server/queries/stock-take-review';
import { getStockTakeWork } from '@/lib/server/queries/stock-take-work';
import { getStockTake } from '@/lib/server/queries/stock-takes';
import { closeCounting, giveUp } from '../../actions';
import { CloseButtons } from './_parts/close-buttons';
import { DifferenceTable } from './_parts/difference-table';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Review ${readParameter((await params).number)}` };
}

export default async function ReviewPage({ params }: Props) {
  const person = await requirePerson('volunteer');
  const take = await getStockTake(readParameter((await params).number));
  if (!take) notFound();
  const path = stockTakePath(take.number);
  if (take.status !== 'open') redirect(path);
  const work = await getStockTakeWork(take);
  const lines = await reviewLines(work.lines);
  const steward = mayActAs(person, 'steward');
  const counted = work.lines.filter(({ foundSeeds }) => foundSeeds !== null).length;
  return (
    <>
      <PageHead
        above={
          <Link href={path}>
            {take.storeName} {take.number}
          </Link>
        }
        title="Review"
        below={`${formatCount(work.done)} of ${formatCount(work.total)} packets looked at, ${formatCount(counted)} counted or weighed.`}
      >
        <Link href={path} className="button">
          Go on counting
        </Link>
      </PageHead>
      <p className="say">
        {lines.length === 0
          ? 'Everything that was looked at is as the ledger says.'
          : `${formatCount(lines.length)} ${lines.length === 1 ? 'packet needs' : 'packets need'} a decision. A difference counts from the balance when the packet was looked at.`}
      </p>
      {steward ? (
        <Form action={closeCounting} className="grid gap-5">
          <HiddenField name="stockTakeId" value={take.id} />
          {lines.length > 0 && <DifferenceTable lines={lines} mayDecide />}
          {work.toDo.length > 0 && (
            <CheckField
              name="closeUnfinished"
              label={`Close although ${formatCount(work.toDo.length)} ${work.toDo.length === 1 ? 'packet was' : 'packets were'} not looked at`}
              hint="They stay as they are."
            />
          )}
          <p className="label">
            Closing writes count corrections and losses into the ledger. Each can be taken back there.
          </p>
          <CloseButtons />
        </Form>
      ) : (
        <>
          {lines.length > 0 && <DifferenceTable lines={lines} mayDecide={false} />}
          <Notice kind="note">A steward decides about the differences and closes the stock-take.</Notice>
        </>
      )}
      {(steward || take.byId === person.id) && (
        <Form action={giveUp} className="grid justify-items-start gap-2">
          <HiddenField name="stockTakeId" value={take.id} />
          <p className="label">Started by mistake? Giving up changes nothing in the ledger.</p>
          <SubmitButton quiet busy="Giving up …">
            Give it up
          </SubmitButton>
        </Form>
      )}
    </>
  );
}
