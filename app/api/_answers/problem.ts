/**
 * An answer that something went wrong, as RFC 9457 has it.
 *
 * @param detail  what whoever asked may do
 * @param more    further members of the problem
 */
export function problem(
  status: number,
  title: string,
  detail: string,
  { more, headers }: { more?: Record<string, unknown>; headers?: Record<string, string> } = {},
): Response {
  return new Response(JSON.stringify({ type: 'about:blank', title, status, detail, ...more }), {
    status,
    headers: { 'Content-Type': 'application/problem+json', 'Cache-Control': 'no-store', ...headers },
  });
}
