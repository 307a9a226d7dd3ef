import 'server-only';
import { cache } from 'react';
import { isLoopbackOnly } from '../env';
import type { Person } from './roles';
import { SINGLE_STEWARD } from './single-steward';

/** Who is asking, or null. On loopback the app's single steward; otherwise whoever the session belongs to. */
export const currentPerson = cache(async (): Promise<Person | null> => {
  if (isLoopbackOnly()) return SINGLE_STEWARD;
  return null;
});
