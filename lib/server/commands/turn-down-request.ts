import { turnDownRequestSchema } from '@/lib/schemas/sharing-request';
import { defineCommand } from './command';
import { refuseChangedRequest, requireOpenRequest } from './open-request';

/** Settles a request without sending anything, with the reason. */
export const turnDownRequest = defineCommand({
  name: 'turn-down-request',
  role: 'steward',
  schema: turnDownRequestSchema,
  async run({ tx, today, audit }, input): Promise<{ number: string }> {
    const request = await requireOpenRequest(tx, input.requestId);
    refuseChangedRequest(request, input.version);
    await tx.sharingRequest.update({
      where: { id: request.id },
      data: {
        status: 'turned-down',
        settledOn: input.on ?? today,
        notes: [request.notes, `Turned down: ${input.reason}`].filter(Boolean).join('\n'),
        version: { increment: 1 },
      },
    });
    await audit({
      entity: 'sharing request',
      entityId: request.id,
      summary: `Turned down request ${request.number} of ${request.recipient}: ${input.reason}`,
    });
    return { number: request.number };
  },
});
