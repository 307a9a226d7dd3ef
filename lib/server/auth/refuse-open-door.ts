import { environment, isLoopbackOnly } from '../env';
import { log } from '../log';

/**
 * HOST says which door there is, HOSTNAME is what the built server listens on (every address if it is not set). If
 * they disagree, a bank without sign-in would answer the whole network: then it must not start at all.
 *
 * @param host       HOST: the address people were told
 * @param listensOn  HOSTNAME as the server reads it; undefined or '' means every address
 * @throws Error when nobody has to sign in but others could connect
 * Checked in tests/server/auth/refuse-open-door.test.ts
 */
export function refuseOpenDoor(host: string, listensOn: string | undefined): void {
  if (isLoopbackOnly(host) && !(listensOn && isLoopbackOnly(listensOn))) {
    throw new Error(
      `refuseOpenDoor: HOST=${host} means that nobody signs in, but the server listens on ${listensOn || 'every address'}. ` +
        "Set both to the same address, or start with 'npm run up', which does.",
    );
  }
}

/** Ends this process, with the reason in its log, when its door stands open or its environment makes no sense. */
export function stopIfDoorIsOpen(): void {
  try {
    refuseOpenDoor(environment().HOST, process.env.HOSTNAME);
  } catch (error) {
    log.fatal({ error }, 'not started');
    // A server whose start fails goes on listening, and answers every request with an error.
    process.exit(1);
  }
}
