import { testPath } from './links';

/** A tray's own page, whether or not its test is finished. */
export const trayPath = (number: string) => `${testPath(number)}/tray`;
/** The form in which a tray's counts of one day are written down. */
export const trayCountPath = (number: string, on?: string) => `${trayPath(number)}/count${on ? `?on=${on}` : ''}`;
export const certificatePath = (number: string) => `${testPath(number)}/certificate`;
/** What is done with trays that were just set: labels, then the bench. */
export const traysSetPath = (numbers: readonly string[]) =>
  `/germination/plan/done?trays=${encodeURIComponent(numbers.join(','))}`;
