import { createHash } from 'node:crypto';
import { createSerwistRoute } from '@serwist/turbopack';

/**
 * The service worker, /worker/sw.js, made while Hilum is built. It carries no list of files to fetch beforehand, only what
 * tells this build from others.
 */
const worker = createSerwistRoute({
  swSrc: 'app/bench/_worker/worker.ts',
  useNativeEsbuild: true,
  esbuildOptions: { sourcemap: false },
  manifestTransforms: [
    (entries) => {
      const revision = createHash('sha256').update(JSON.stringify(entries)).digest('base64url').slice(0, 16);
      return { manifest: [{ url: 'build', revision, size: 0 }], warnings: [] };
    },
  ],
});

export const dynamic = 'force-static';
export const dynamicParams = false;
export const revalidate = false;
export const generateStaticParams = worker.generateStaticParams;

export async function GET(request: Request, context: { params: Promise<{ path: string }> }): Promise<Response> {
  const answer = await worker.GET(request, context);
  // A phone must hear of a new worker at its next visit.
  answer.headers.set('Cache-Control', 'no-cache');
  return answer;
}
