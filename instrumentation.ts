/** Runs once when the server starts: judgements that a crash or a new day left behind are made before anybody looks. */
export async function register() {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { keepJudgementsFresh } = await import('./lib/server/judging/keep-fresh');
  await keepJudgementsFresh();
}
