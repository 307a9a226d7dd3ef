import { problem } from '@/app/api/_answers/problem';
import { refusalOf } from '@/app/api/_answers/refusal';
import { currentPerson } from '@/lib/server/auth/current-person';
import { requireRole } from '@/lib/server/commands/command';
import { readPhoto } from '@/lib/server/photos/photo-files';
import { getTrayPhoto } from '@/lib/server/queries/tray-photo';

/** A photograph of a tray or a dish. It never changes, so a browser may keep it. */
export async function GET(_request: Request, { params }: { params: Promise<{ id: string }> }): Promise<Response> {
  try {
    requireRole(await currentPerson(), 'visitor');
    const photo = getTrayPhoto((await params).id);
    const bytes = photo && (await readPhoto(photo.id));
    if (!bytes) return problem(404, 'Not here', 'There is no such photograph.');
    return new Response(bytes, {
      headers: {
        'Content-Type': 'image/webp',
        'Content-Disposition': 'inline',
        'Cache-Control': 'private, max-age=31536000, immutable',
        'X-Content-Type-Options': 'nosniff',
      },
    });
  } catch (error) {
    return refusalOf(error, 'showing a photograph');
  }
}
