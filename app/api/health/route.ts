/** The process is alive. Open to anybody: it says nothing else. */
export function GET(): Response {
  return Response.json({ status: 'alive' }, { headers: { 'Cache-Control': 'no-store' } });
}

export const dynamic = 'force-dynamic';
