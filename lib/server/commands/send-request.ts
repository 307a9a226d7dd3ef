import { gramsToWeighOut } from '@/lib/domain/stock/grams-to-weigh-out';
import { spreadOfAmount } from '@/lib/domain/stock/spread-of-amount';
import { sendRequestSchema } from '@/lib/schemas/sharing-request';
import { AppError } from '../app-error';
import { newId } from '../new-id';
import { loadRequestLines, type RequestLine } from '../queries/request-lines';
import { type CommandContext, defineCommand } from './command';
import { fieldError } from './field-error';
import { type OpenRequest, refuseChangedRequest, requireOpenRequest } from './open-request';
import { packetBalance } from './packet-balance';

/**
 * Sends what is on a request: every line leaves its packet's ledger, and the request is settled. All lines or none; what
 * stands against a line is said beside it.
 */
export const sendRequest = defineCommand({
  name: 'send-request',
  role: 'steward',
  schema: sendRequestSchema,
  async run(context, input): Promise<{ number: string }> {
    const { tx, audit, rejudge } = context;
    const request = await requireOpenRequest(tx, input.requestId);
    refuseChangedRequest(request, input.version);
    const lines = await loadRequestLines(tx, request.id);
    if (lines.length === 0) throw new AppError('refused', 'There is nothing on the list yet: put a lot on it first.');

    const errors = Object.fromEntries(lines.flatMap((line) => Object.entries(refusalsOf(line, input))));
    if (Object.keys(errors).length > 0) throw fieldError(errors);
    const on = input.on ?? context.today;
    await refuseBeforeFilling(context, lines, on);

    const sent = lines.map((line) => ({ line, why: input.overrule[line.id] }));
    for (const { line, why } of sent) {
      await sendLine(context, {
        request,
        line,
        on,
        why: line.hindrance ? why : undefined,
        weighed: input.measured === 'weighed',
      });
    }
    await tx.sharingRequest.update({
      where: { id: request.id },
      data: { status: 'sent', settledOn: on, version: { increment: 1 } },
    });
    const overruled = sent.filter(({ line, why }) => line.hindrance && why);
    await audit({
      entity: 'sharing request',
      entityId: request.id,
      summary: [
        `Sent request ${request.number} to ${request.recipient}: ${countOf(lines.length, 'lot')}`,
        ...overruled.map(
          ({ line, why }) => `${line.lot?.number} though ${line.hindrance?.kind.replaceAll('-', ' ')}: ${why}`,
        ),
      ].join('; '),
      after: {
        on,
        lines: lines.map((line) => ({ lot: line.lot?.number, packet: line.packet?.number, seeds: line.seeds })),
      },
    });
    rejudge([...new Set(lines.flatMap((line) => (line.lot ? [line.lot.id] : [])))]);
    return { number: request.number };
  },
});

interface Answers {
  terms: Record<string, boolean>;
  treated: Record<string, boolean>;
  overrule: Record<string, string | undefined>;
}

/** What stands against a line, by the field beside which it is said; the page has its hindrance beside it in words. */
function refusalsOf(line: RequestLine, { terms, treated, overrule }: Answers): Record<string, string> {
  const refusals: Record<string, string> = {};
  const { hindrance } = line;
  if (hindrance && !hindrance.mayBeOverruled) refusals[`line.${line.id}`] = hindrance.sentence;
  if (hindrance?.mayBeOverruled && !overrule[line.id]) {
    refusals[`overrule.${line.id}`] = 'Write why it goes all the same, or change the list.';
  }
  if (line.accession.sharing === 'with-terms' && !terms[line.id]) {
    refusals[`terms.${line.id}`] = 'Tick that the recipient has agreed to these terms.';
  }
  if (line.lot?.treatment && !treated[line.id]) {
    refusals[`treated.${line.id}`] = 'Tick that the bag says how this seed is treated.';
  }
  return refusals;
}

async function refuseBeforeFilling({ tx }: CommandContext, lines: RequestLine[], on: string): Promise<void> {
  const first = await tx.movement.groupBy({
    by: ['packetId'],
    where: { packetId: { in: lines.flatMap((line) => (line.packet ? [line.packet.id] : [])) } },
    _min: { on: true },
  });
  for (const line of lines) {
    const filledOn = first.find((one) => one.packetId === line.packet?.id)?._min.on;
    if (filledOn && on < filledOn) {
      throw fieldError({
        on: `Packet ${line.packet?.number} was filled on ${filledOn}: seed can only have come out since.`,
      });
    }
  }
}

interface Sending {
  request: OpenRequest;
  line: RequestLine;
  on: string;
  /** why it goes though something stands against it */
  why: string | undefined;
  weighed: boolean;
}

async function sendLine({ tx, person, audit }: CommandContext, sending: Sending): Promise<void> {
  const { request, line, on, why, weighed } = sending;
  const { lot, packet, seeds } = line;
  if (!lot || !packet || seeds === null) throw new Error(`line ${line.id} was not checked`);
  const held = await packetBalance(tx, packet.id);
  const grams = weighed ? gramsToWeighOut(seeds, lot.thousandSeedWeightG) : null;
  const id = newId();
  await tx.movement.create({
    data: {
      id,
      packetId: packet.id,
      on,
      reason: 'sharing',
      seeds: -seeds,
      grams: grams === null ? null : -grams,
      seedsSd: spreadOfAmount({ seeds, weighedG: grams }),
      note: [`request ${request.number} to ${request.recipient}`, line.note, why && `all the same: ${why}`]
        .filter(Boolean)
        .join('; '),
      byId: person.id,
      requestId: request.id,
    },
  });
  await tx.sharingLine.update({ where: { id: line.id }, data: { movementId: id } });
  await audit({
    entity: 'packet',
    entityId: packet.id,
    summary: `Took ${seeds} seeds out of packet ${packet.number} of lot ${lot.number} for request ${request.number} to ${request.recipient}`,
    before: { seeds: held },
    after: { seeds: held - seeds },
  });
}

const countOf = (count: number, thing: string) => `${count} ${thing}${count === 1 ? '' : 's'}`;
