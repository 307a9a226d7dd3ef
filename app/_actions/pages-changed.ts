import 'server-only';
import { revalidatePath } from 'next/cache';

/**
 * Has every page of the bank that was visited read anew, after something was saved. What was made while building, the
 * phones' worker among it, stands outside and stays: it holds nothing of the collection, and a running server has not
 * the tools to make it again. Checked in tests/e2e/built-server.spec.ts
 */
export const pagesChanged = (): void => revalidatePath('/(bank)', 'layout');
