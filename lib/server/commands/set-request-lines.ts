import { setRequestLinesSchema } from '@/lib/schemas/sharing-request';
import { loadRequestLines, type RequestLine } from '../queries/request-lines';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { requireOpenRequest } from './open-request';
import { StaleVersion } from './stale-version';

/** Changes packet, seeds and note of lines, and takes lines out, all at once. */
export const setRequestLines = defineCommand({
  name: 'set-request-lines',
  role: 'volunteer',
  schema: setRequestLinesSchema,
  async run({ tx, audit }, input): Promise<{ number: string; version: number }> {
    const request = await requireOpenRequest(tx, input.requestId);
    if (request.version !== input.version) {
      throw new StaleVersion(
        `Request ${request.number} was changed while you were writing, so yours is not saved yet. Lines that others added stay. What you typed is still here: save again to put it in place of theirs.`,
        request.version,
      );
    }
    const stored = await loadRequestLines(tx, request.id);
    const errors: Record<string, string> = {};
    const changes: string[] = [];
    for (const [index, { id, remove, packetId, seeds, note = null }] of input.lines.entries()) {
      const line = stored.find((one) => one.id === id);
      // Somebody else took it out: there is nothing left to change.
      if (!line) continue;
      if (remove) {
        await tx.sharingLine.delete({ where: { id } });
        changes.push(`${lotOf(line)} taken out`);
        continue;
      }
      const packet = line.packets.find((one) => one.id === packetId);
      if (!packet) errors[`lines.${index}.packetId`] = 'Choose a packet of this lot.';
      else if (seeds > packet.seeds) {
        errors[`lines.${index}.seeds`] = `Packet ${packet.number} holds about ${packet.seeds} seeds.`;
      } else if (packetId !== line.packet?.id || seeds !== line.seeds || note !== line.note) {
        await tx.sharingLine.update({ where: { id }, data: { packetId, seeds, note } });
        changes.push(`${seeds} seeds of ${lotOf(line)} from ${packet.number}`);
      }
    }
    if (Object.keys(errors).length > 0) throw fieldError(errors);
    if (changes.length > 0) {
      await tx.sharingRequest.update({ where: { id: request.id }, data: { version: { increment: 1 } } });
    }
    await audit({
      entity: 'sharing request',
      entityId: request.id,
      summary: `Changed the list of request ${request.number}: ${changes.join(', ') || 'nothing'}`,
    });
    return { number: request.number, version: request.version + (changes.length > 0 ? 1 : 0) };
  },
});

const lotOf = (line: RequestLine) => `lot ${line.lot?.number ?? line.accession.number}`;
