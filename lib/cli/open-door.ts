/**
 * The TLS door: makes, renews or checks the certificate, opens the port and passes requests on to the server, until it is
 * stopped. Prints one JSON line when it is open, and one whenever addresses or certificate change:
 * { port, notes, addresses, fingerprint }.
 *
 * Environment besides the app's: HILUM_INNER_PORT, where the plain server listens on this computer.
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { environment } from '../server/env';
import { fingerprintOf, readAuthority } from '../server/tls/authority-file';
import { hasBroughtCertificate, openDoorCertificate, phoneAddresses } from '../server/tls/door-certificate';
import { type Door, openTlsDoor } from '../server/tls/tls-door';

const LOOK_AGAIN_MS = 60_000;

const innerPort = z.coerce.number().int().min(1).max(65535).parse(process.env.HILUM_INNER_PORT);

function certificateNow() {
  const { certificateFile, keyFile, notes } = openDoorCertificate(new Date());
  return { certificate: readFileSync(certificateFile, 'utf8'), key: readFileSync(keyFile, 'utf8'), notes };
}

function tell(port: number, notes: string[]): void {
  const authority = hasBroughtCertificate() ? null : readAuthority(environment().DATA_DIR);
  const told = { port, notes, addresses: phoneAddresses(port), fingerprint: authority && fingerprintOf(authority) };
  process.stdout.write(`${JSON.stringify(told)}\n`);
}

/** A laptop joins another network, a brought certificate is renewed: the door follows without being closed. */
function keepUp(door: Door, shown: ReturnType<typeof certificateNow>): void {
  let last = shown;
  let complained = '';
  setInterval(() => {
    try {
      const now = certificateNow();
      if (now.certificate === last.certificate && now.key === last.key) return;
      door.showCertificate(now.certificate, now.key);
      last = now;
      complained = '';
      tell(door.port, now.notes);
    } catch (error) {
      const { message } = error as Error;
      if (message !== complained) process.stderr.write(`${message}\n`);
      complained = message;
    }
  }, LOOK_AGAIN_MS);
}

try {
  const shown = certificateNow();
  const { HOST, PORT } = environment();
  const door = await openTlsDoor({ host: HOST, port: PORT, innerPort, certificate: shown.certificate, key: shown.key });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => void door.close().then(() => process.exit(0)));
  keepUp(door, shown);
  tell(door.port, shown.notes);
} catch (error) {
  process.stderr.write(`${inWords(error as NodeJS.ErrnoException)}\n`);
  process.exit(1);
}

function inWords({ code, message }: NodeJS.ErrnoException): string {
  const { HOST, PORT } = environment();
  if (code === 'EADDRINUSE') return `Port ${PORT} is taken by another program. Choose another: PORT=4311 npm run up`;
  if (code === 'EACCES') return `The system does not let this account open port ${PORT}. Choose one above 1024.`;
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND') return `HOST=${HOST} is no address of this computer.`;
  return message;
}
