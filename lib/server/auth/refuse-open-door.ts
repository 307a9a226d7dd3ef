import { isLoopbackOnly } from '../env';

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
