/** The process is alive, and it is Hilum. Open to anybody: it says nothing else. */
export function GET(): Response {
  return Response.json({ name: 'hilum', status: 'alive' }, { headers: { 'Cache-Control': 'no-store' } });
}

export const dynamic = 'force-dynamic';
