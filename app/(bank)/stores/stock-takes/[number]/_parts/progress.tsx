import { formatCount } from '@/app/_format/figures';

interface Props {
  done: number;
  total: number;
  /** packets found here that belong elsewhere */
  elsewhere: number;
}

/** '31 of 48 looked at', as a bar and in words. */
export function Progress({ done, total, elsewhere }: Props) {
  return (
    <div className="grid max-w-2xl gap-1">
      <p className="say">
        <b>
          {formatCount(done)} of {formatCount(total)}
        </b>{' '}
        looked at
        {elsewhere > 0 &&
          `, and ${formatCount(elsewhere)} found that ${elsewhere === 1 ? 'belongs' : 'belong'} elsewhere`}
        .
      </p>
      <div aria-hidden className="h-2 overflow-hidden rounded-paper border border-rule bg-sunk">
        <div className="h-full bg-leaf" style={{ width: `${total === 0 ? 100 : (100 * done) / total}%` }} />
      </div>
    </div>
  );
}
