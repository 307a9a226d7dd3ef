import { describe, expect, it } from 'vitest';
import { AppError } from '@/lib/server/app-error';
import { mayActAs, type Person, ROLES } from '@/lib/server/auth/roles';
import type { Command } from '@/lib/server/commands/command';
import { reader } from '@/lib/server/database/connections';
import { useTestBank } from '@/tests/support/test-bank';

/**
 * Walks every command as nobody and as every role. A command that is added is found by itself; who may use it is what
 * it declares, so what is checked here is that the declaration holds, and holds before the input is looked at.
 */
useTestBank();

const modules = import.meta.glob<Record<string, unknown>>('../../../lib/server/commands/*.ts', { eager: true });
const isCommand = (value: unknown): value is Command<unknown> =>
  typeof value === 'function' && 'commandName' in value && 'role' in value;
const commands = Object.values(modules).flatMap((module) => Object.values(module).filter(isCommand));

const people: (Person | null)[] = [null, ...ROLES.map((role) => ({ id: `a-${role}`, name: `A ${role}`, role }))];
const refusalOf = async (command: Command<unknown>, person: Person | null, input: unknown) => {
  try {
    await command(person, input);
    return null;
  } catch (error) {
    return error instanceof AppError ? error.code : String(error);
  }
};

it('finds every command, and all of them in lib/server/commands', () => {
  const sources = import.meta.glob<string>('../../../lib/**/*.ts', { eager: true, query: '?raw', import: 'default' });
  const makingOne = Object.keys(sources).filter((file) =>
    /= defineCommand\(|: Command<.*Object\.assign\(/.test(sources[file] ?? ''),
  );
  const exportingOne = Object.keys(modules).filter((file) => Object.values(modules[file] ?? {}).some(isCommand));
  expect(makingOne.length).toBeGreaterThan(10);
  expect(exportingOne.sort()).toEqual(makingOne.sort());
});

it('gives every command a name of its own and a role that exists', () => {
  expect(new Set(commands.map((command) => command.commandName)).size).toBe(commands.length);
  for (const command of commands) expect(ROLES).toContain(command.role);
});

describe.each(commands.map((command) => [command.commandName, command] as const))('%s', (_, command) => {
  it.each(people.map((person) => [person?.role ?? 'nobody', person] as const))('as %s', async (_role, person) => {
    const before = await reader().auditEntry.count();
    const expected = person === null ? 'sign-in-needed' : mayActAs(person, command.role) ? null : 'not-allowed';
    const refusals = [await refusalOf(command, person, {}), await refusalOf(command, person, null)];
    if (expected === null) {
      for (const refusal of refusals) expect(['sign-in-needed', 'not-allowed']).not.toContain(refusal);
    } else {
      expect(refusals).toEqual([expected, expected]);
      expect(await reader().auditEntry.count()).toBe(before);
    }
  });
});
