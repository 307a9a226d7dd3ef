import { type LabelsAddress, readLabelsAddress } from '@/app/_components/labels/labels-address';
import { refusalWords } from '@/app/_components/labels/refusal-words';
import { runOfAddress } from '@/app/_components/labels/run-of-address';
import { bagLabel } from '@/lib/domain/labels/bag-label';
import type { LabelText } from '@/lib/domain/labels/label-text';
import { packetLabel } from '@/lib/domain/labels/packet-label';
import { trayLabel } from '@/lib/domain/labels/tray-label';
import { AppError } from '@/lib/server/app-error';
import { currentPerson } from '@/lib/server/auth/current-person';
import { requireRole } from '@/lib/server/commands/command';
import { labelsPdf } from '@/lib/server/labels/labels-pdf';
import { allPages } from '@/lib/server/labels/print-run';
import { findBagsToLabel } from '@/lib/server/queries/bag-labels';
import { getBank } from '@/lib/server/queries/bank';
import { findFormats } from '@/lib/server/queries/label-formats';
import { findLabelledPackets } from '@/lib/server/queries/packet-labels';
import { findLabelledDishes } from '@/lib/server/queries/tray-labels';
import { today } from '@/lib/server/today';

/** Labels as a PDF, asked for with the address of the page that shows them. */
export async function GET(request: Request): Promise<Response> {
  try {
    requireRole(await currentPerson(), 'volunteer');
  } catch (error) {
    if (error instanceof AppError) return words(error.userMessage, error.code === 'sign-in-needed' ? 401 : 403);
    throw error;
  }
  const address = Object.fromEntries(new URL(request.url).searchParams);
  const wanted = readLabelsAddress(address);
  const [formats, bank] = await Promise.all([findFormats(), getBank()]);
  const texts = await textsOf(wanted, bank.address);
  if (texts.length === 0) return words(nothingToPrint(wanted), 400);
  const { question, asked } = runOfAddress(address, formats, texts.length);
  if (!asked) return words(Object.values(question.errors).join('\n'), 400);
  const laid = await allPages({ ...asked, texts });
  if (!laid.ok) return words(refusalWords(laid), 400);
  const pdf = await labelsPdf(laid.pages);
  return new Response(new Uint8Array(pdf), {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="labels-${today()}.pdf"`,
      'Cache-Control': 'no-store',
    },
  });
}

async function textsOf({ request, packets, trays }: LabelsAddress, bankAddress: string | null): Promise<LabelText[]> {
  if (trays.length > 0) return findLabelledDishes(trays).map((dish) => trayLabel(dish, bankAddress));
  if (request === '') return (await findLabelledPackets(packets)).map((packet) => packetLabel(packet, bankAddress));
  const found = await findBagsToLabel(request);
  return (found?.bags ?? []).map((bag) => bagLabel(bag, bankAddress));
}

function nothingToPrint({ request, trays }: LabelsAddress): string {
  if (trays.length > 0) return 'None of these tests is in the collection: choose trays first.';
  return request === ''
    ? 'None of these packets is in the collection: choose packets first.'
    : `There is no bag to label for request ${request}: choose its lots first.`;
}

const words = (message: string, status: number) =>
  new Response(message, { status, headers: { 'Content-Type': 'text/plain; charset=utf-8' } });
