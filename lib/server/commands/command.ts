import 'server-only';
import type { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { AppError } from '../app-error';
import { mayActAs, type Person, type Role } from '../auth/roles';
import { connections } from '../database/connections';
import { explainFailure } from '../database/explain-failure';
import { enqueueWrite } from '../database/write-queue';
import { judgeLots, type LotsToJudge, markForJudging } from '../judging/judge-lots';
import { log } from '../log';
import { today } from '../today';

export interface AuditRecord {
  entity: string;
  entityId: string;
  /** One plain line: what changed. */
  summary: string;
  before?: unknown;
  after?: unknown;
}

export interface CommandContext {
  tx: Prisma.TransactionClient;
  person: Person;
  today: string;
  /** Every command must leave at least one entry; the transaction is rolled back if it does not. */
  audit(entry: AuditRecord): Promise<void>;
  /** Lots whose judgement no longer holds: judged anew before the command returns. */
  rejudge(lots: LotsToJudge): void;
}

export interface CommandDefinition<Schema extends z.ZodType, Result> {
  name: string;
  role: Role;
  schema: Schema | ((today: string) => Schema);
  run(context: CommandContext, input: z.output<Schema>): Promise<Result>;
}

export interface Command<Result> {
  (person: Person | null, input: unknown): Promise<Result>;
  commandName: string;
  role: Role;
}

/**
 * A write: who may, what input, one transaction, an audit entry, and fresh judgements afterwards.
 *
 * @throws AppError 'sign-in-needed' or 'not-allowed' before the input is looked at, 'invalid-input' with a message for
 *   each field, whatever refusal `run` throws, or the database's own trouble in words (explain-failure.ts)
 */
export function defineCommand<Schema extends z.ZodType, Result>(
  definition: CommandDefinition<Schema, Result>,
): Command<Result> {
  const execute = async (person: Person | null, input: unknown): Promise<Result> => {
    const actor = requireRole(person, definition.role);
    const day = today();
    const schema = typeof definition.schema === 'function' ? definition.schema(day) : definition.schema;
    const parsed = schema.safeParse(input);
    if (!parsed.success) throw invalidInput(parsed.error);
    try {
      return await enqueueWrite(() => inTransaction(definition, actor, day, parsed.data));
    } catch (error) {
      throw explainFailure(error) ?? error;
    }
  };
  return Object.assign(execute, { commandName: definition.name, role: definition.role });
}

async function inTransaction<Schema extends z.ZodType, Result>(
  definition: CommandDefinition<Schema, Result>,
  person: Person,
  day: string,
  input: z.output<Schema>,
): Promise<Result> {
  const { writer } = connections();
  const stale: LotsToJudge[] = [];
  const result = await writer.$transaction(async (tx) => {
    // The first statement takes the write lock, so that what is read below cannot change before it is written.
    await tx.$executeRaw`UPDATE "Bank" SET "id" = "id" WHERE 0`;
    let audited = 0;
    const outcome = await definition.run(
      {
        tx,
        person,
        today: day,
        audit: async (entry) => {
          audited += 1;
          await tx.auditEntry.create({
            data: {
              byId: person.id,
              byName: person.name,
              command: definition.name,
              entity: entry.entity,
              entityId: entry.entityId,
              summary: entry.summary,
              before: entry.before === undefined ? null : JSON.stringify(entry.before),
              after: entry.after === undefined ? null : JSON.stringify(entry.after),
            },
          });
        },
        rejudge: (lots) => stale.push(lots),
      },
      input,
    );
    if (audited === 0) throw new Error(`command ${definition.name} left no audit entry`);
    for (const lots of stale) await markForJudging(tx, lots);
    return outcome;
  });
  if (stale.length > 0) await judgeAfterwards(definition.name, stale.includes('all') ? 'all' : stale.flat(), day);
  return result;
}

/** What was written is written: a failure to judge is ours to mend, and the lots stay marked until they are judged. */
async function judgeAfterwards(command: string, lots: LotsToJudge, day: string): Promise<void> {
  try {
    await judgeLots(connections().bulk, lots, day);
  } catch (error) {
    log.error({ error, command, lots }, 'judging after a command failed');
  }
}

export function requireRole(person: Person | null, needed: Role): Person {
  if (!person) throw new AppError('sign-in-needed', 'Sign in first.');
  if (!mayActAs(person, needed)) {
    throw new AppError('not-allowed', `This is for a ${needed}; you are signed in as a ${person.role}. Ask a steward.`);
  }
  return person;
}

export function invalidInput(error: z.ZodError): AppError {
  const fieldErrors: Record<string, string> = {};
  for (const issue of error.issues) {
    const field = issue.path.join('.') || 'form';
    fieldErrors[field] ??= issue.message;
  }
  return new AppError('invalid-input', 'Some entries need another look. Nothing was saved yet.', { fieldErrors });
}
