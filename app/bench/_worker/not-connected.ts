/** What any other page of Hilum is without a connection. It must need nothing else. */
export function notConnected({ benchIsKept }: { benchIsKept: boolean }): Response {
  return new Response(page(benchIsKept ? BENCH_WORKS : BENCH_NEVER_OPENED), {
    status: 503,
    headers: {
      'Content-Type': 'text/html; charset=utf-8',
      'Cache-Control': 'no-store',
      'Content-Security-Policy': "default-src 'none'; style-src 'unsafe-inline'",
    },
  });
}

const BENCH_WORKS = `<p>The bench works all the same: what you count there waits on this device and is sent later.</p>
<p><a href="/bench">Open the bench</a></p>`;
const BENCH_NEVER_OPENED =
  '<p>The bench works without a connection once it has been opened on this device with one. It has not been opened here yet.</p>';

const page = (ofBench: string) => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Not connected · Hilum</title>
<style>
:root { color-scheme: light dark; }
body { margin: 0; padding: 1.5rem 1rem; font: 1.125rem/1.5 system-ui, sans-serif; background: light-dark(#f5f3ec, #16191a); color: light-dark(#1d2424, #e9e6dc); }
main { max-width: 32rem; }
h1 { font-size: 1.5rem; line-height: 1.2; }
a { display: inline-block; min-height: 2.75rem; padding: 0 1rem; line-height: 2.75rem; border: 1px solid; border-radius: .375rem; color: inherit; font-weight: 600; text-decoration: none; }
</style>
</head>
<body>
<main>
<h1>You are not connected</h1>
<p>Hilum cannot be reached just now, and this page needs it.</p>
${ofBench}
</main>
</body>
</html>
`;
