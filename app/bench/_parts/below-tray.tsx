import { memo, type Ref, useDeferredValue } from 'react';
import type { Bench, TrayView } from '../_store/bench-view';
import { TrayDays } from './tray-days';
import { TrayNotes } from './tray-notes';
import type { Counting } from './use-counting';

interface Props {
  bench: Bench;
  view: TrayView;
  counting: Counting;
  today: string;
  online: boolean;
  ref: Ref<HTMLElement>;
}

/** What lies below the first screenful of a tray. It is drawn after the dish under the finger. */
export function BelowTray(props: Props) {
  const shown = useDeferredValue<Props | null>(props, null);
  return shown && <Drawn {...shown} />;
}

const Drawn = memo(function Drawn({ bench, view, counting, today, online, ref }: Props) {
  return (
    <section
      ref={ref}
      tabIndex={-1}
      aria-label="Notes, photos and other days"
      className="mx-auto grid max-w-xl gap-6 px-3 pt-4 pb-8 outline-none [contain-intrinsic-size:auto_40rem] [content-visibility:auto] @min-[40rem]:max-w-5xl @min-[40rem]:grid-cols-2"
    >
      <TrayNotes
        bench={bench}
        tray={view.tray}
        position={counting.state.dish.position}
        on={counting.on}
        only={view.dishes.length === 1}
        sent={online && view.waiting === 0}
        photosWaiting={view.photosWaiting}
      />
      <TrayDays view={view} counting={counting} today={today} />
    </section>
  );
});
