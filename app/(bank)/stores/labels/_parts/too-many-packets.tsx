import { Notice } from '@/app/_components/notice';
import { formatCount } from '@/app/_format/figures';

/** Numbers far apart do not become ranges, and their list would be too long for an address. */
export function TooManyPackets({ asked }: { asked: number }) {
  return (
    <Notice kind="error">
      {formatCount(asked)} packets are too many for one run, because their numbers lie far apart. Choose a store or a
      crop at a time; nothing was added.
    </Notice>
  );
}
