/**
 * One volunteer at a device of their own: takes seed out of a packet, once, when told to. Arguments: packet, seeds.
 */
import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { AppError } from '@/lib/server/app-error';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { VOLUNTEER } from '../people';

const [packetId, amount] = process.argv.slice(2);

async function take(): Promise<string> {
  try {
    const { seedsLeft } = await takeSeedOut(VOLUNTEER, { packetId, amount, unit: 'seeds', reason: 'sowing' });
    return `ack 1 ${seedsLeft}`;
  } catch (error) {
    if (error instanceof AppError) return `refused 1 ${error.fieldErrors.amount ?? error.userMessage}`;
    return `failed 1 ${String(error).replace(/\n/g, ' | ')}`;
  }
}

writeSync(1, 'ready\n');
for await (const _line of createInterface({ input: process.stdin })) {
  writeSync(1, `${await take()}\n`);
  process.exit(0);
}
