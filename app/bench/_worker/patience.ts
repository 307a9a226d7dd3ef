/*
 * At the edge of the signal a server often neither answers nor fails: the phone waits, for minutes. Whoever stands there
 * with wet hands waits a moment and gets what the phone has.
 */

/** So long the server is waited for where the phone has something to go on with. */
const PATIENCE_MS = 3_000;
/** So long a server that kept silent is not waited for again: going from tray to tray must not cost it each time. */
const KNOWN_SILENT_MS = 30_000;

let silentUntil = 0;

/** @returns null when the answer takes longer than the server is waited for; it rejects as the answer does */
export async function inTime(answer: Promise<Response>): Promise<Response | null> {
  const answered = answer.then((response) => {
    silentUntil = 0;
    return response;
  });
  let timer: ReturnType<typeof setTimeout> | undefined;
  const wait = Date.now() < silentUntil ? 0 : PATIENCE_MS;
  const over = new Promise<null>((resolve) => {
    timer = setTimeout(resolve, wait, null);
  });
  try {
    const first = await Promise.race([answered, over]);
    if (first === null) {
      silentUntil = Date.now() + KNOWN_SILENT_MS;
      // Its failure, if that comes later, is nobody's any more.
      answered.catch(() => undefined);
    }
    return first;
  } finally {
    clearTimeout(timer);
  }
}
