import { environment } from '@/lib/server/env';
import { nameOfAuthority, readAuthority } from '@/lib/server/tls/authority-file';
import { phoneDoor } from '@/lib/server/tls/phone-door';

/** The certificate of the bank's own authority, for phones to trust. Open to anybody: it is no secret, its key is. */
export function GET(): Response {
  const authority = phoneDoor(null).kind === 'own-authority' ? readAuthority(environment().DATA_DIR) : null;
  if (!authority) {
    return new Response('This bank has no authority of its own as it runs now, so there is nothing to trust.', {
      status: 404,
      headers: { 'Content-Type': 'text/plain; charset=utf-8' },
    });
  }
  const file = nameOfAuthority(authority)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-');
  return new Response(new Uint8Array(authority.raw), {
    headers: {
      'Content-Type': 'application/x-x509-ca-cert',
      'Content-Disposition': `attachment; filename="${file}.crt"`,
      'Cache-Control': 'no-store',
    },
  });
}

export const dynamic = 'force-dynamic';
