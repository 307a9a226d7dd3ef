import type { Prisma } from '@/generated/prisma/client';
import { fieldError } from './field-error';

export interface FoundAccession {
  id: string;
  number: string;
  name: string;
  cropId: string;
}

/**
 * The accession that somebody named by its number or its exact name, in any case.
 *
 * @param typed  as typed
 * @param field  the form's field, for the message
 * @throws AppError beside the field when there is none, or when several share the name
 */
export async function findAccession(
  tx: Prisma.TransactionClient,
  typed: string,
  field: string,
): Promise<FoundAccession> {
  const select = { id: true, number: true, name: true, cropId: true } as const;
  const exact = await tx.accession.findUnique({ where: { number: typed }, select });
  if (exact) return exact;
  const matches = await tx.$queryRaw<FoundAccession[]>`
    SELECT "id", "number", "name", "cropId" FROM "Accession"
    WHERE "number" = ${typed} COLLATE NOCASE OR "name" = ${typed} COLLATE NOCASE
    ORDER BY "number" = ${typed} COLLATE NOCASE DESC, "number" LIMIT 6`;
  const [first, second] = matches;
  if (!first) {
    throw fieldError({
      [field]: `No accession has the number or name “${typed}”. Check the label, or make the accession first.`,
    });
  }
  if (second && first.number.toLowerCase() !== typed.toLowerCase()) {
    const numbers = matches.map((match) => match.number).join(', ');
    throw fieldError({ [field]: `Several accessions are called “${typed}”: write the number (${numbers}).` });
  }
  return first;
}
