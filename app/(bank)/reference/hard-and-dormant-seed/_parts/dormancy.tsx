import { Notice } from '@/app/_components/notice';
import type { DormantShare } from '@/lib/domain/germination/dormancy/dormant-share';
import { dormantInWords } from './dormant-words';

/** How much is alive but does not germinate, or that the two tests cannot both be right. */
export function Dormancy({ dormant, way }: { dormant: DormantShare; way: 'stained' | 'treated' }) {
  const sentence = dormantInWords(dormant, way);
  if (dormant.verdict === 'contradiction') return <Notice kind="caution">{sentence}</Notice>;
  return <p className="max-w-prose">{sentence}</p>;
}
