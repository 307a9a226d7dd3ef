import Link from 'next/link';
import { HiddenField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { ScrollBox } from '@/app/_components/scroll-box';
import { formatInstant } from '@/app/_format/figures';
import type { ReadingTokenRow } from '@/lib/server/queries/reading-imports';
import { makeToken, revokeToken } from '../actions';
import { IssuedToken } from './issued-token';

interface Props {
  storeId: string;
  tokens: readonly ReadingTokenRow[];
}

const EXAMPLE = `curl -X POST …/api/readings \\
  -H 'Authorization: Bearer hilum-readings-…' \\
  -H 'Content-Type: application/json' \\
  -d '{"readings": [{"at": "2026-11-25T14:00:00Z", "temperatureC": 4.2, "humidityPercent": 45}]}'`;

/** Scripts that send readings of this store by themselves. */
export function TokenPart({ storeId, tokens }: Props) {
  return (
    <section className="grid gap-3" aria-labelledby="scripts">
      <h2 id="scripts">Scripts</h2>
      <p className="max-w-prose">
        A logger on the network, or a script beside one, may send readings of this store by itself. Each has a token of
        its own; a token opens nothing else.
      </p>
      {tokens.length > 0 && (
        <ul className="sheet grid gap-4">
          {tokens.map((token) => (
            <li key={token.id} className="flex flex-wrap items-center justify-between gap-3">
              <span className="min-w-0">
                <b className="wrap-anywhere">{token.name}</b>{' '}
                <span className="quiet">
                  made {formatInstant(token.createdAt)},{' '}
                  {token.lastUsedAt ? `last used ${formatInstant(token.lastUsedAt)}` : 'not used yet'}
                  {token.revokedAt && `, revoked ${formatInstant(token.revokedAt)}`}
                </span>
              </span>
              {!token.revokedAt && (
                <Form action={revokeToken}>
                  <HiddenField name="id" value={token.id} />
                  <SubmitButton quiet busy="Revoking …">
                    Revoke {token.name}
                  </SubmitButton>
                </Form>
              )}
            </li>
          ))}
        </ul>
      )}
      <div className="sheet max-w-2xl">
        <Form action={makeToken}>
          <HiddenField name="storeId" value={storeId} />
          <TextField name="name" label="Name of the token" hint="Which logger or script it is for." />
          <div>
            <SubmitButton busy="Making …">Make a token</SubmitButton>
          </div>
          <IssuedToken />
        </Form>
      </div>
      <details>
        <summary className="cursor-pointer font-semibold">How a script sends readings</summary>
        <ScrollBox label="An example" className="sheet mt-2">
          <pre className="figures text-sm">{EXAMPLE}</pre>
        </ScrollBox>
        <p className="quiet mt-2 max-w-prose">
          Instants carry their offset; a reading that is sent twice is kept once; when one of them is wrong none is
          added, and the answer names it. CSV is taken as well. Readings that a script has sent are taken back on{' '}
          <Link href="#imports">the list above</Link>.
        </p>
      </details>
    </section>
  );
}
