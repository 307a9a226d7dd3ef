/** Runs once when the server starts, before it answers anybody. */
export async function register() {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { stopIfDoorIsOpen } = await import('./lib/server/auth/refuse-open-door');
  if (process.env.NODE_ENV === 'production') stopIfDoorIsOpen();
  // Judgements that a crash or a new day left behind are made before anybody looks.
  const { keepJudgementsFresh } = await import('./lib/server/judging/keep-fresh');
  await keepJudgementsFresh();
}
