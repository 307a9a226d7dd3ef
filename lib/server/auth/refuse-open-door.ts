import { environment, isLoopback } from '../env';
import { log } from '../log';

/**
 * The built server speaks plain http, so it listens on this computer alone; `npm run up` puts TLS before it where HOST
 * lets others in. HOSTNAME is what it listens on (every address if it is not set): then a bank, perhaps one without
 * sign-in, would answer the whole network in the clear, and must not start at all.
 *
 * @param listensOn  HOSTNAME as the server reads it; undefined or '' means every address
 * @throws Error when others could connect without TLS
 * Checked in tests/server/auth/refuse-open-door.test.ts
 */
export function refuseOpenDoor(listensOn: string | undefined): void {
  if (!listensOn || !isLoopback(listensOn)) {
    throw new Error(
      `refuseOpenDoor: the server would listen on ${listensOn || 'every address'} without TLS. ` +
        "Set HOSTNAME=127.0.0.1, or start with 'npm run up', which does, and puts TLS in front where HOST lets others in.",
    );
  }
}

/** Ends this process, with the reason in its log, when its door stands open or its environment makes no sense. */
export function stopIfDoorIsOpen(): void {
  try {
    environment();
    refuseOpenDoor(process.env.HOSTNAME);
  } catch (error) {
    log.fatal({ error }, 'not started');
    // A server whose start fails goes on listening, and answers every request with an error.
    process.exit(1);
  }
}
