'use server';

import { z } from 'zod';
import type { FormState } from '@/app/_actions/form-state';
import { pagesChanged } from '@/app/_actions/pages-changed';
import { runForm } from '@/app/_actions/run-form';
import { stockTakePath } from '@/app/_format/stock-take-path';
import { readStockTakeEntry } from '@/lib/schemas/stock-take';
import { AppError } from '@/lib/server/app-error';
import { currentPerson } from '@/lib/server/auth/current-person';
import { closeStockTake } from '@/lib/server/commands/close-stock-take';
import { requireRole } from '@/lib/server/commands/command';
import { giveUpStockTake } from '@/lib/server/commands/give-up-stock-take';
import { recordStockTakeLine } from '@/lib/server/commands/record-stock-take-line';
import { removeStockTakeLine } from '@/lib/server/commands/remove-stock-take-line';
import { saveStockTakeDecisions } from '@/lib/server/commands/save-stock-take-decisions';
import { startStockTake } from '@/lib/server/commands/start-stock-take';
import { log } from '@/lib/server/log';
import { findByCode, getPacketInStockTake, type PacketInStockTake } from '@/lib/server/queries/stock-take-packet';
import { foundInWords } from './_parts/found-words';
import type { ScanState } from './_parts/scan-state';

export async function startCounting(state: FormState, data: FormData): Promise<FormState> {
  return runForm(startStockTake, state, data, ({ number }) => stockTakePath(number));
}

export async function giveUp(state: FormState, data: FormData): Promise<FormState> {
  return runForm(giveUpStockTake, state, data, ({ number }) => stockTakePath(number));
}

export async function closeCounting(state: FormState, data: FormData): Promise<FormState> {
  const save = data.get('intent') === 'save';
  const answer = await runForm(save ? saveStockTakeDecisions : closeStockTake, state, data, ({ number }) =>
    save ? `${stockTakePath(number)}/review` : stockTakePath(number),
  );
  // Refused: what was counted meanwhile is to be seen beside the refusal.
  pagesChanged();
  return answer;
}

const entrySchema = z.object({
  stockTakeId: z.string().max(100),
  storeId: z.string().max(100),
  /** 'text': code or amount from the one field; else a button of the packet that is named */
  what: z.enum(['text', 'seeds', 'grams', 'here', 'not-here', 'undo']),
  text: z.string().max(500).catch(''),
  amount: z.string().max(100).catch(''),
  packetId: z.string().max(100).catch(''),
  version: z.coerce.number().int().min(0).catch(0),
});
type Pressed = z.output<typeof entrySchema> & { what: 'seeds' | 'grams' | 'here' | 'not-here' | 'undo' };

/**
 * One entry while going through a store. The answer is shown where it was entered, without another page. An amount from
 * the one field belongs to the packet of the answer before it: entries are answered in the order in which they were made.
 */
export async function enterPacket(previous: ScanState, data: FormData): Promise<ScanState> {
  const answer = await answerTo(previous, data);
  if (answer.kind !== 'error') pagesChanged();
  return { ...answer, attempt: previous.attempt + 1 };
}

type Answer = Omit<ScanState, 'attempt'>;
const refuse = (said: string, packet: PacketInStockTake | null = null): Answer => ({ kind: 'error', said, packet });

async function answerTo(previous: ScanState, data: FormData): Promise<Answer> {
  try {
    requireRole(await currentPerson(), 'volunteer');
    const asked = entrySchema.safeParse(Object.fromEntries(data));
    if (!asked.success) return refuse('Load the page again: this entry could not be read.');
    const entry = asked.data;
    const take = { id: entry.stockTakeId, storeId: entry.storeId };
    const { what } = entry;
    if (what !== 'text') return await press(take, { ...entry, what });
    const read = readStockTakeEntry(entry.text);
    if (read.kind === 'code') return await scan(take, read.text);
    if (!previous.packet) return refuse('Scan or type the code of a packet first, then its seeds.');
    return await write(take, previous.packet, { finding: 'here', amount: read.amount, unit: read.unit });
  } catch (error) {
    if (error instanceof AppError) {
      const answer = refuse(sentenceOf(error));
      return error.code === 'sign-in-needed' || error.code === 'not-allowed'
        ? { ...answer, refused: error.code }
        : answer;
    }
    log.error({ error }, 'an entry of a stock-take failed');
    return refuse('Something went wrong on our side and nothing was saved. Enter it again.');
  }
}

/** A code ticks its packet; one that was looked at already is only shown. */
async function scan(take: { id: string; storeId: string }, text: string): Promise<Answer> {
  if (text === '') return refuse('Scan or type the code of a packet.');
  const found = await findByCode(take, text);
  if (!found.ok) return refuse(found.sentence);
  const { packet } = found;
  if (!packet.line) return write(take, packet, { finding: 'here' });
  return { kind: 'note', packet, said: `${packet.number} was written down already: ${foundInWords(packet.line)}.` };
}

async function press(take: { id: string; storeId: string }, entry: Pressed): Promise<Answer> {
  const found = await getPacketInStockTake(take, entry.packetId);
  if (!found.ok) return refuse(found.sentence);
  const packet = { ...found.packet, line: found.packet.line && { ...found.packet.line, version: entry.version } };
  if (entry.what === 'undo') {
    const { id: stockTakeId } = take;
    await removeStockTakeLine(await currentPerson(), {
      stockTakeId,
      packetId: packet.packetId,
      version: entry.version,
    });
    return { kind: 'done', packet: { ...packet, line: null }, said: `${packet.number} is to be looked at again.` };
  }
  const version = entry.version;
  if (entry.what === 'here' || entry.what === 'not-here') return write(take, packet, { finding: entry.what }, version);
  return write(take, packet, { finding: 'here', amount: entry.amount, unit: entry.what }, version);
}

interface Found {
  finding: 'here' | 'not-here';
  amount?: string;
  unit?: 'seeds' | 'grams';
}

async function write(
  take: { id: string; storeId: string },
  packet: PacketInStockTake,
  found: Found,
  version = packet.line?.version ?? 0,
): Promise<Answer> {
  const input = { stockTakeId: take.id, packetId: packet.packetId, version, ...found };
  try {
    const {
      stockTakeNumber: _,
      packetId: __,
      expectedSeeds,
      ...line
    } = await recordStockTakeLine(await currentPerson(), input);
    const where = packet.belongsHere ? '' : ` It should lie elsewhere: ${packet.placeName || 'nowhere'}.`;
    const said = `${packet.number} ${packet.accessionName}: ${foundInWords(line)}.${where}`;
    return { kind: 'done', packet: { ...packet, seeds: expectedSeeds, line }, said };
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    // Shown with what stands there now, so that entering it again is a knowing choice.
    const now = await getPacketInStockTake(take, packet.packetId);
    return refuse(sentenceOf(error), now.ok ? now.packet : packet);
  }
}

const sentenceOf = (error: AppError): string => Object.values(error.fieldErrors)[0] ?? error.userMessage;
