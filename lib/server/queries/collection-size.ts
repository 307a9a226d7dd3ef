import 'server-only';
import { reader } from '../database/connections';

export async function countLots(): Promise<number> {
  return reader().lot.count();
}

export async function countJudged(): Promise<{ lots: number; accessions: number; judgedOn: string | null }> {
  const [lots, accessions, latest] = await Promise.all([
    reader().lotJudgement.count(),
    reader().accessionJudgement.count(),
    reader().lotJudgement.findFirst({ select: { judgedOn: true } }),
  ]);
  return { lots, accessions, judgedOn: latest?.judgedOn || null };
}
