import { readLabelsAddress } from '@/app/(bank)/stores/labels/_parts/labels-address';
import { refusalWords } from '@/app/(bank)/stores/labels/_parts/refusal-words';
import { runOfAddress } from '@/app/(bank)/stores/labels/_parts/run-of-address';
import { packetLabel } from '@/lib/domain/labels/packet-label';
import { AppError } from '@/lib/server/app-error';
import { currentPerson } from '@/lib/server/auth/current-person';
import { requireRole } from '@/lib/server/commands/command';
import { labelsPdf } from '@/lib/server/labels/labels-pdf';
import { allPages } from '@/lib/server/labels/print-run';
import { getBank } from '@/lib/server/queries/bank';
import { findFormats } from '@/lib/server/queries/label-formats';
import { findLabelledPackets } from '@/lib/server/queries/packet-labels';
import { today } from '@/lib/server/today';

/** Labels as a PDF, asked for with the address of the labels page. */
export async function GET(request: Request): Promise<Response> {
  try {
    requireRole(await currentPerson(), 'volunteer');
  } catch (error) {
    if (error instanceof AppError) return words(error.userMessage, error.code === 'sign-in-needed' ? 401 : 403);
    throw error;
  }
  const address = Object.fromEntries(new URL(request.url).searchParams);
  const [packets, formats, bank] = await Promise.all([
    findLabelledPackets(readLabelsAddress(address).packets),
    findFormats(),
    getBank(),
  ]);
  if (packets.length === 0) return words('None of these packets is in the collection: choose packets first.', 400);
  const { question, asked } = runOfAddress(address, formats, packets.length);
  if (!asked) return words(Object.values(question.errors).join('\n'), 400);
  const laid = await allPages({ ...asked, texts: packets.map((packet) => packetLabel(packet, bank.address)) });
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

const words = (message: string, status: number) =>
  new Response(message, { status, headers: { 'Content-Type': 'text/plain; charset=utf-8' } });
