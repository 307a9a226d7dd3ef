import { updateRequestSchema } from '@/lib/schemas/sharing-request';
import { defineCommand } from './command';
import { describeChanges } from './describe-changes';
import { requireOpenRequest } from './open-request';
import { refuseStale } from './stale-version';

const LABELS = {
  recipient: 'recipient',
  recipientKind: 'kind of recipient',
  contact: 'contact',
  purpose: 'purpose',
  askedOn: 'date asked',
  notes: 'notes',
};

/** Corrects who asks, and what for. Its lines stay. */
export const updateRequest = defineCommand({
  name: 'update-request',
  role: 'volunteer',
  schema: updateRequestSchema,
  async run({ tx, audit }, { id, version, ...fields }): Promise<{ number: string }> {
    const { number } = await requireOpenRequest(tx, id);
    const { version: stored, ...was } = await tx.sharingRequest.findUniqueOrThrow({
      where: { id },
      select: {
        recipient: true,
        recipientKind: true,
        contact: true,
        purpose: true,
        askedOn: true,
        notes: true,
        version: true,
      },
    });
    const record = { entity: 'sharing request', entityId: id };
    await refuseStale(tx, { ...record, called: `Request ${number}` }, version, stored, LABELS);
    const data = {
      recipient: fields.recipient,
      recipientKind: fields.recipientKind,
      contact: fields.contact ?? null,
      purpose: fields.purpose ?? null,
      askedOn: fields.askedOn ?? was.askedOn,
      notes: fields.notes ?? null,
    };
    const changes = describeChanges(was, data, LABELS);
    const after = { ...data, version: changes ? version + 1 : version };
    await tx.sharingRequest.update({ where: { id }, data: after });
    const before = { ...was, version: stored };
    await audit({ ...record, summary: `Changed request ${number}: ${changes || 'nothing'}`, before, after });
    return { number };
  },
});
