import { problem } from '@/app/api/_answers/problem';
import { refusalOf } from '@/app/api/_answers/refusal';
import { MAX_PHOTO_BYTES, sentPhotoSchema } from '@/lib/schemas/bench-entries';
import type { EntryAnswer } from '@/lib/schemas/bench-wire';
import { currentPerson } from '@/lib/server/auth/current-person';
import { bytesUpTo } from '@/lib/server/body-up-to';
import { addBenchPhoto } from '@/lib/server/commands/add-bench-photo';
import { requireRole } from '@/lib/server/commands/command';
import { keepPhoto } from '@/lib/server/photos/photo-files';
import { preparePhoto } from '@/lib/server/photos/prepare-photo';
import { getTrayPhoto } from '@/lib/server/queries/tray-photo';

/** A photograph from a phone at the bench: the picture is the body, what it shows stands in the address. */
export async function POST(request: Request): Promise<Response> {
  try {
    const person = requireRole(await currentPerson(), 'volunteer');
    if (!/^image\//i.test(request.headers.get('content-type') ?? '')) {
      return problem(415, 'Not a picture', 'Send Content-Type: image/jpeg, image/png or image/webp.');
    }
    const asked = new URL(request.url).searchParams;
    const dish = asked.get('dish');
    const parsed = sentPhotoSchema.safeParse({
      ...{ id: asked.get('id'), deviceId: asked.get('device'), trayId: asked.get('tray') },
      ...{ dish: dish ? Number(dish) : null, on: asked.get('on'), madeAt: asked.get('madeAt') },
    });
    if (!parsed.success) {
      return problem(422, 'Not understood', parsed.error.issues[0]?.message ?? 'Take the picture again.');
    }
    const photo = parsed.data;
    const bytes = await bytesUpTo(request, MAX_PHOTO_BYTES);
    if (bytes === null) return refused(photo.id, 'This picture has more than 15 MB. Take it again, smaller.');
    const prepared = await preparePhoto(bytes);
    if (!prepared.ok) return refused(photo.id, prepared.message);
    const { width, height } = prepared;
    // The file comes before its row; the file of a photograph that is here already stays as it is.
    if (!getTrayPhoto(photo.id)) await keepPhoto(photo.id, prepared.bytes);
    return answer(await addBenchPhoto(person, { ...photo, width, height, bytes: prepared.bytes.byteLength }));
  } catch (error) {
    return refusalOf(error, 'taking a photograph from the bench');
  }
}

const answer = (body: EntryAnswer) => Response.json(body, { headers: { 'Cache-Control': 'no-store' } });
const refused = (id: string, message: string) => answer({ id, outcome: 'refused', message });
