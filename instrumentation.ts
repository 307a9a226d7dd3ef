/** Runs once when the server starts, before it answers anybody. */
export async function register() {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { stopIfDoorIsOpen } = await import('./lib/server/auth/refuse-open-door');
  if (process.env.NODE_ENV === 'production') stopIfDoorIsOpen();
  const { keepJudgementsFresh } = await import('./lib/server/judging/keep-fresh');
  // Judgements that a crash or a new day left behind. Not waited for: a large bank opens at once, and shows those it has
  // until today's are made.
  void keepJudgementsFresh();
}
