import { ISOLATIONS } from '@/lib/domain/pollination/isolation';

/** How seed was kept true, in words; a key that is not in the list as it stands. */
export const isolationLabel = (key: string) => ISOLATIONS.find((isolation) => isolation.key === key)?.label ?? key;
