import type { KeyboardEvent } from 'react';
import type { SeedClass } from '@/lib/domain/germination/seed-classes';

export interface KeyDeeds {
  digit: (digit: string) => void;
  digitBack: () => void;
  more: () => void;
  less: () => void;
  choose: (seedClass: SeedClass) => void;
  noneNew: () => void;
  undo: () => void;
  /** the next dish; after the last one done */
  next: () => void;
  dishAfter: () => void;
  dishBefore: () => void;
  help: () => void;
}

/** What the keys do, as they are listed on the screen. */
export const KEYS: readonly (readonly [keys: string, deed: string])[] = [
  ['0 to 9', 'today’s number'],
  ['Backspace', 'last digit away'],
  ['+ −, up and down', 'one more, one less'],
  ['Enter', 'next dish, and after the last one done'],
  ['Left, right', 'dish before, dish after'],
  ['=', 'none new: same as last time'],
  ['N A H F D', 'count normal, abnormal, hard, fresh, dead'],
  ['U', 'undo'],
  ['?', 'these keys'],
];

const CLASS_KEYS: Record<string, SeedClass> = { n: 'normal', a: 'abnormal', h: 'hard', f: 'fresh', d: 'dead' };

/**
 * Counts by keyboard. Keys work only while something of the tray has the focus, and never in a text box, so that no
 * speech input or slip of a finger elsewhere counts seed. Enter on a button presses it, as everywhere.
 */
export function onCountingKey(event: KeyboardEvent, offered: readonly SeedClass[], deeds: KeyDeeds): void {
  if (event.ctrlKey || event.metaKey || event.altKey || event.nativeEvent.isComposing) return;
  const target = event.target as HTMLElement;
  if (target.closest('textarea, select, dialog, input:not([type="radio"])')) return;
  const onRadio = target.matches('input[type="radio"]');
  if (event.key === 'Enter' && target.closest('button, a, summary, label')) return;
  const deed = deedOf(event.key, onRadio, offered, deeds);
  if (!deed) return;
  event.preventDefault();
  deed();
}

function deedOf(key: string, onRadio: boolean, offered: readonly SeedClass[], deeds: KeyDeeds): (() => void) | null {
  if (/^\d$/.test(key)) return () => deeds.digit(key);
  const seedClass = CLASS_KEYS[key.toLowerCase()];
  if (seedClass) return offered.includes(seedClass) ? () => deeds.choose(seedClass) : null;
  // Arrows go from class to class where the classes have the focus.
  if (onRadio && key.startsWith('Arrow')) return null;
  switch (key) {
    case '+':
    case 'ArrowUp':
      return deeds.more;
    case '-':
    case '−':
    case 'ArrowDown':
      return deeds.less;
    case '=':
      return deeds.noneNew;
    case 'Backspace':
      return deeds.digitBack;
    case 'Enter':
      return deeds.next;
    case 'ArrowRight':
      return deeds.dishAfter;
    case 'ArrowLeft':
      return deeds.dishBefore;
    case 'u':
    case 'U':
      return deeds.undo;
    case '?':
      return deeds.help;
    default:
      return null;
  }
}
