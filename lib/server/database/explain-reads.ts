import 'server-only';
import type { PrismaClient } from '@/generated/prisma/client';
import { explainFailure } from './explain-failure';

/** The same client, whose queries throw what is wrong with the file in words (AppError) instead of a driver's code. */
export function explainReads(client: PrismaClient): PrismaClient {
  const explaining = client.$extends({
    name: 'explain-reads',
    query: {
      $allOperations: async ({ args, query }) => {
        try {
          return await query(args);
        } catch (error) {
          throw explainFailure(error) ?? error;
        }
      },
    },
  });
  return explaining as unknown as PrismaClient;
}
