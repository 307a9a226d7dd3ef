import { AppError } from '@/lib/server/app-error';
import { currentPerson } from '@/lib/server/auth/current-person';
import { requireRole } from '@/lib/server/commands/command';
import { getImportState } from '@/lib/server/queries/imports';

/** How far an import is. */
export async function GET(_request: Request, { params }: { params: Promise<{ id: string }> }): Promise<Response> {
  try {
    requireRole(await currentPerson(), 'steward');
  } catch (error) {
    if (error instanceof AppError) {
      return Response.json({ message: error.userMessage }, { status: error.code === 'sign-in-needed' ? 401 : 403 });
    }
    throw error;
  }
  return Response.json(await getImportState((await params).id), { headers: { 'Cache-Control': 'no-store' } });
}
