import { type NextRequest, NextResponse } from 'next/server';
import { ADDRESS_HEADER } from '@/lib/server/auth/asked-address';
import { refuseForeignRequest } from '@/lib/server/auth/refuse-foreign-request';
import { environment, isLoopbackOnly } from '@/lib/server/env';

/**
 * Runs before every page and route: refuses foreign requests and sets the headers that keep a page to itself.
 * Who may do what is not decided here but in every page, action and route.
 */
export function proxy(request: NextRequest): NextResponse {
  const publicAddress = environment().HILUM_ADDRESS;
  const refusal = refuseForeignRequest(
    {
      host: request.headers.get('host'),
      origin: request.headers.get('origin'),
      fetchSite: request.headers.get('sec-fetch-site'),
      method: request.method,
    },
    { loopbackOnly: isLoopbackOnly(), publicAddress },
  );
  if (refusal) {
    return new NextResponse(refusal.message, {
      status: refusal.status,
      headers: { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' },
    });
  }
  const nonce = crypto.randomUUID();
  const policy = contentSecurityPolicy(nonce);
  const headers = new Headers(request.headers);
  headers.set('x-nonce', nonce);
  // A page cannot see its own address; whoever has to sign in first is brought back to it.
  headers.set(ADDRESS_HEADER, `${request.nextUrl.pathname}${request.nextUrl.search}`);
  // Next reads the nonce for its own scripts from this header of the request.
  headers.set('Content-Security-Policy', policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set('Content-Security-Policy', policy);
  response.headers.set('X-Content-Type-Options', 'nosniff');
  response.headers.set('Referrer-Policy', 'same-origin');
  response.headers.set('Cross-Origin-Opener-Policy', 'same-origin');
  response.headers.set('Cross-Origin-Resource-Policy', 'same-origin');
  response.headers.set('Permissions-Policy', 'camera=(self), geolocation=(), microphone=()');
  if (publicAddress?.startsWith('https:') && !hasOwnAuthority()) {
    response.headers.set('Strict-Transport-Security', 'max-age=31536000');
  }
  return response;
}

/**
 * Whoever has not trusted the bank's own authority yet must be able to open the page that says how; and other programs
 * of a computer in the house may have no https at all.
 */
function hasOwnAuthority(): boolean {
  const { HILUM_TLS_PORT, TLS_CERT } = environment();
  return HILUM_TLS_PORT !== undefined && TLS_CERT === undefined;
}

function contentSecurityPolicy(nonce: string): string {
  const development = process.env.NODE_ENV === 'development';
  return [
    "default-src 'self'",
    // React's development build names the lines of an error by means of eval.
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic' 'wasm-unsafe-eval'${development ? " 'unsafe-eval'" : ''}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    `connect-src 'self'${development ? ' ws:' : ''}`,
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

// Built files carry no data and are the same for everybody.
export const config = { matcher: '/((?!_next/static/).*)' };
