import type { BenchSnapshot, EntryAnswer, EntryAnswers, SentEntries } from '@/lib/schemas/bench-wire';
import type { OwnPhoto } from './own-entries';

/** What the server said, or why it said nothing that can be used. */
export type Reached<Value> =
  | { ok: true; value: Value }
  | { ok: false; why: 'offline' | 'sign-in-needed' | 'no-answer' };

/** The server as the bench needs it. */
export interface BenchServer {
  /** @param tag  of what was read last; null reads in any case */
  read(tag: string | null): Promise<Reached<{ snapshot: BenchSnapshot; tag: string | null } | 'unchanged'>>;
  send(entries: SentEntries): Promise<Reached<EntryAnswers>>;
  sendPhoto(photo: OwnPhoto, deviceId: string): Promise<Reached<EntryAnswer>>;
}

const PATIENCE_MS = 20_000;
const PATIENCE_WITH_PICTURES_MS = 90_000;

/** The server that this page came from. */
export const benchServer: BenchServer = {
  async read(tag) {
    const answer = await ask('/api/bench', { headers: tag === null ? {} : { 'If-None-Match': tag } });
    if (!answer.ok) return answer;
    if (answer.value.status === 304) return { ok: true, value: 'unchanged' };
    const read = await json<BenchSnapshot>(answer.value, ({ trays }) => Array.isArray(trays));
    if (!read.ok) return read;
    return { ok: true, value: { snapshot: read.value, tag: answer.value.headers.get('ETag') } };
  },
  async send(entries) {
    const answer = await ask('/api/bench/entries', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(entries),
    });
    return answer.ok ? json<EntryAnswers>(answer.value, ({ answers }) => Array.isArray(answers)) : answer;
  },
  async sendPhoto({ id, trayId, dish, on, madeAt, picture }, deviceId) {
    const address = new URLSearchParams({ id, device: deviceId, tray: trayId, on, madeAt });
    if (dish !== null) address.set('dish', String(dish));
    const answer = await ask(
      `/api/bench/photos?${address}`,
      { method: 'POST', headers: { 'Content-Type': picture.type || 'image/jpeg' }, body: picture },
      PATIENCE_WITH_PICTURES_MS,
    );
    return answer.ok ? json<EntryAnswer>(answer.value, ({ outcome }) => typeof outcome === 'string') : answer;
  },
};

async function ask(address: string, request: RequestInit, patience = PATIENCE_MS): Promise<Reached<Response>> {
  try {
    const answer = await fetch(address, {
      ...request,
      cache: 'no-store',
      credentials: 'same-origin',
      // Our server never sends anybody elsewhere here; a café's sign-in page does.
      redirect: 'error',
      signal: AbortSignal.timeout(patience),
    });
    if (answer.ok || answer.status === 304) return { ok: true, value: answer };
    // A visitor may not count either: whoever is a volunteer has to sign in.
    return { ok: false, why: answer.status === 401 || answer.status === 403 ? 'sign-in-needed' : 'no-answer' };
  } catch {
    return { ok: false, why: navigator.onLine ? 'no-answer' : 'offline' };
  }
}

async function json<Value>(answer: Response, isIt: (value: Value) => boolean): Promise<Reached<Value>> {
  try {
    const value = (await answer.json()) as Value;
    return isIt(value) ? { ok: true, value } : { ok: false, why: 'no-answer' };
  } catch {
    return { ok: false, why: 'no-answer' };
  }
}
