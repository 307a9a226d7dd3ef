import { AppError } from '@/lib/server/app-error';
import { currentPerson } from '@/lib/server/auth/current-person';
import { requireRole } from '@/lib/server/commands/command';
import { getReadingImportState } from '@/lib/server/queries/reading-imports';

/** How far an import of readings is. */
export async function GET(_request: Request, { params }: { params: Promise<{ id: string }> }): Promise<Response> {
  try {
    requireRole(await currentPerson(), 'volunteer');
  } catch (error) {
    if (error instanceof AppError) {
      return Response.json({ message: error.userMessage }, { status: error.code === 'sign-in-needed' ? 401 : 403 });
    }
    throw error;
  }
  const state = await getReadingImportState(Number((await params).id));
  return Response.json(state, { headers: { 'Cache-Control': 'no-store' } });
}
