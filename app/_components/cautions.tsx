import { CAUTIONS } from '@/lib/domain/reference/cautions';
import { Notice } from './notice';

/** Cautions by key, in words ready for the screen, where the work is done. */
export function Cautions({ keys }: { keys: readonly string[] }) {
  const shown = CAUTIONS.filter((caution) => keys.includes(caution.key));
  if (shown.length === 0) return null;
  return (
    <Notice kind="caution">
      {shown.map((caution) => (
        <p key={caution.key} className="max-w-prose [&+p]:mt-2">
          {caution.text}
        </p>
      ))}
    </Notice>
  );
}
