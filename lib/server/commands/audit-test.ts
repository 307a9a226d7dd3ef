import type { CommandContext } from './command';

interface Numbered {
  id: string;
  number: string;
}

interface AuditedTest extends Numbered {
  entity: 'germination test' | 'moisture test' | 'viability test';
  lot: Numbered;
  /** what was found */
  result: string;
  /** behind the result of a test that corrects none: where its seed lay */
  origin?: string;
  /** the test that it corrects, as it was written */
  corrected: Numbered | null;
  correctionReason: string | undefined;
  after: unknown;
}

/** Tells the history of a test, and of the one that it corrects, that it was written down. */
export async function auditTest(audit: CommandContext['audit'], test: AuditedTest): Promise<void> {
  const { entity, id, number, lot, result, origin = '', corrected, correctionReason, after } = test;
  await audit({
    entity,
    entityId: id,
    summary: corrected
      ? `Corrected ${corrected.number} as ${number}, lot ${lot.number}: ${result}. Reason: ${correctionReason}`
      : `Recorded ${number} on lot ${lot.number}: ${result}${origin}`,
    before: corrected ?? undefined,
    after,
  });
  if (!corrected) return;
  await audit({ entity, entityId: corrected.id, summary: `Corrected by ${number}. Reason: ${correctionReason}` });
}

interface TakenSeed {
  seeds: number;
  packet: Numbered;
  /** the day on which it was taken out, if that was before the test was written down */
  on?: string;
}

/**
 * Tells a packet's history which test had seed of it.
 *
 * @param test  in words: 'cut test V-0012'
 */
export const auditSeedOfTest = (audit: CommandContext['audit'], { seeds, packet, on }: TakenSeed, test: string) =>
  audit({
    entity: 'packet',
    entityId: packet.id,
    summary: on
      ? `${seeds} seeds taken out of ${packet.number} on ${on} went into ${test}`
      : `${seeds} seeds taken out of ${packet.number} for ${test}`,
  });
