import type { StripEventKind } from '@/lib/domain/longevity/storage-strip';

const EVENTS: Record<StripEventKind, string> = {
  moved: 'moved',
  repacked: 'repacked',
  'moved and repacked': 'moved and repacked',
  'climate changed': 'its store was moved or set anew',
  sealed: 'sealed',
  opened: 'opened',
  desiccant: 'desiccant changed',
};

/** How an event is marked on the strip; its words stand in the legend. */
export const EVENT_SIGNS: Record<StripEventKind, string> = {
  moved: '→',
  repacked: '◇',
  'moved and repacked': '→◇',
  'climate changed': '△',
  sealed: '●',
  opened: '○',
  desiccant: '∴',
};

/** What happened to a packet, in words. */
export const eventWords = (what: StripEventKind): string => EVENTS[what];

/** Probits with as many digits as tell something: '1.24', '0.031', '0.0004'. */
export function ageingFigure(probits: number): string {
  if (probits === 0) return '0';
  return probits >= 0.1 ? probits.toFixed(2) : String(Number(probits.toPrecision(2)));
}

/** How much of a stay's climate was measured: '4.2 °C is measured' is said of days that were. */
export function measuredWords(shareRead: number, loggedIn: string | null): string {
  const where = loggedIn === null ? '' : ` in ${loggedIn}`;
  if (shareRead >= 0.995) return `logged${where}`;
  if (shareRead < 0.005) return 'target, not logged';
  return `${Math.min(99, Math.max(1, Math.round(shareRead * 100)))} % logged${where}, else target`;
}
