import type { Person } from '@/lib/server/auth/roles';
import type { Command } from '@/lib/server/commands/command';
import { VOLUNTEER } from '../../people';
import type { Chooser } from '../chooser';

/** What somebody is about to do to the bank as it is now. Some of it is refused, as in life. */
export interface Attempt {
  command: Command<unknown>;
  person: Person;
  input: Record<string, unknown>;
}

/** Chooses an attempt; null where the bank has nothing to do it to. */
export type Act = (choose: Chooser) => Attempt | null;

export const volunteer = (command: Command<unknown>, input: Record<string, unknown>): Attempt => ({
  command,
  person: VOLUNTEER,
  input,
});
