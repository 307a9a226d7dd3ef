import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type APIRequestContext, expect, type Page, test } from '@playwright/test';
import Database from 'better-sqlite3';
import { ROLES, type Role } from '../../lib/domain/people/roles';
import { signInPath } from '../../lib/schemas/way-back';
import { actionsOfBuild, pagesOnDisk, routesOnDisk, type ServerAction } from './support/app-surface';
import { BANKS, TEST_TODAY } from './support/prepare-banks';
import { type RunningServer, startServer } from './support/start-server';
import { ACTIONS, PAGES, type PageRule, ROUTES, type Who } from './support/who-may';

/** Both doors: accounts where other devices can connect, and none, but no stranger either, on loopback. */
type Asker = Role | 'nobody';
const ASKERS: Asker[] = ['nobody', ...ROLES];
const SETUP_CODE = 'field-gate-77';
const PASSWORDS: Record<Role, string> = {
  steward: 'three dry bean pods',
  volunteer: 'a jar of black beans',
  visitor: 'one ripe leek in rain',
};

const may = (asker: Asker, who: Who): boolean =>
  who === 'anyone' || (asker !== 'nobody' && ROLES.indexOf(asker) >= ROLES.indexOf(who));

function copyOfBank(): string {
  const directory = mkdtempSync(path.join(tmpdir(), 'hilum-doors-'));
  cpSync(path.join(BANKS, 'demo'), directory, { recursive: true });
  return directory;
}

test('every page, route and action says who it is for', () => {
  const report = 'add what is missing to tests/e2e/support/who-may.ts, take out what is gone';
  expect(pagesOnDisk(), report).toEqual(Object.keys(PAGES).sort());
  expect(routesOnDisk(), report).toEqual(Object.keys(ROUTES).sort());
  expect(
    actionsOfBuild().map((action) => action.name),
    report,
  ).toEqual(Object.keys(ACTIONS).sort((one, other) => one.localeCompare(other)));
});

test.describe('where other devices can connect', () => {
  test.describe.configure({ mode: 'serial' });
  let directory: string;
  let server: RunningServer;
  let database: Database.Database;
  let askers: Record<Asker, APIRequestContext>;

  test.beforeAll(async ({ playwright }) => {
    directory = copyOfBank();
    server = await startServer({
      host: '0.0.0.0',
      dataDirectory: directory,
      env: { HILUM_TODAY: TEST_TODAY, HILUM_SETUP_CODE: SETUP_CODE },
    });
    database = new Database(path.join(directory, 'hilum.db'), { readonly: true });
    const open = () => playwright.request.newContext({ baseURL: server.address, maxRedirects: 0 });
    askers = { nobody: await open(), visitor: await open(), volunteer: await open(), steward: await open() };
  });

  test.afterAll(async () => {
    await Promise.all(Object.values(askers ?? {}).map((context) => context.dispose()));
    database?.close();
    await server?.stop();
    rmSync(directory, { recursive: true, force: true });
  });

  test('the first visit makes the steward, who lets the others in', async ({ browser, playwright }) => {
    const signedIn = async (role: Role, page: Page) => {
      const storageState = await page.context().storageState();
      await askers[role].dispose();
      askers[role] = await playwright.request.newContext({ baseURL: server.address, maxRedirects: 0, storageState });
    };
    const steward = await (await browser.newContext({ baseURL: server.address })).newPage();
    await steward.goto('/');
    await expect(steward.getByRole('heading', { name: 'Welcome' })).toBeVisible();
    const found = async (setupCode: string) => {
      await steward.getByLabel('Setup code').fill(setupCode);
      await steward.getByLabel('Your name').fill('Ada');
      await steward.getByLabel('Sign-in name').fill('ada');
      await steward.getByLabel('Password').fill(PASSWORDS.steward);
      await steward.getByRole('button', { name: 'Open the bank' }).click();
    };
    await found('a guess');
    await expect(steward.getByText('That is not the code in the terminal.')).toBeVisible();
    await found(SETUP_CODE);
    await expect(steward.getByRole('heading', { level: 1, name: 'Today' })).toBeVisible();
    await signedIn('steward', steward);
    expect((await askers.nobody.get('/welcome')).status()).toBe(404);

    for (const role of ['volunteer', 'visitor'] as const) {
      await steward.goto('/settings/people');
      await steward.getByLabel('Name', { exact: true }).fill(`The ${role}`);
      await steward.getByLabel('Sign-in name').fill(role);
      await steward.getByLabel('Role').selectOption(role);
      await steward.getByRole('button', { name: 'Add and make a code' }).click();
      const code = await steward.getByText(/^[2-9A-Z]{4}(-[2-9A-Z]{4}){3}$/).textContent();
      const page = await (await browser.newContext({ baseURL: server.address })).newPage();
      await page.goto('/');
      await page.getByRole('link', { name: 'Set a password with a code' }).click();
      await expect(page.getByRole('heading', { name: 'Set a password' })).toBeVisible();
      await page.getByLabel('Sign-in name').fill(role);
      await page.getByLabel('Code').fill((code as string).toLowerCase());
      await page.getByLabel('New password').fill(PASSWORDS[role]);
      await page.getByRole('button', { name: 'Set this password' }).click();
      await expect(page.getByText('Your new password is set.')).toBeVisible();
      await page.getByLabel('Sign-in name').fill(role);
      await page.getByLabel('Password', { exact: true }).fill('not the password');
      await page.getByRole('button', { name: 'Sign in' }).click();
      await expect(page.getByText('That name and password do not go together.')).toBeVisible();
      await expect(page.getByLabel('Sign-in name')).toHaveValue(role);
      await page.getByLabel('Password', { exact: true }).fill(PASSWORDS[role]);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await expect(page.getByRole('heading', { level: 1, name: 'Today' })).toBeVisible();
      await signedIn(role, page);
      await page.context().close();
    }
    await steward.context().close();
  });

  const fill = (address: string, { sample }: PageRule): string => {
    if (sample === undefined) return address;
    const value = database.prepare<[], unknown>(sample).pluck().get();
    expect(value, `the demo has something for ${address}`).toBeTruthy();
    return address.replace(/\[\w+\]/, encodeURIComponent(String(value)));
  };

  for (const asker of ASKERS) {
    test(`pages as ${asker}`, async () => {
      for (const [address, rule] of Object.entries(PAGES)) {
        const filled = fill(address, rule);
        const answer = await askers[asker].get(filled);
        const said = `${address} as ${asker}`;
        if (may(asker, rule.who)) {
          // Whoever is signed in already is sent on from the sign-in page.
          const expected = rule.answers ?? (address === '/sign-in' && asker !== 'nobody' ? 307 : 200);
          expect(answer.status(), said).toBe(expected);
          expect(answer.headers().location ?? '', said).not.toContain('/sign-in');
        } else if (asker === 'nobody') {
          expect(answer.status(), said).toBe(307);
          expect(answer.headers().location, said).toBe(signInPath(filled));
          await expectNothingOfTheBank(answer.text(), said);
        } else {
          expect(answer.status(), said).toBe(403);
          expect(await answer.text(), said).toContain('Not for your role');
        }
      }
    });

    test(`routes as ${asker}`, async () => {
      for (const [route, rule] of Object.entries(ROUTES)) {
        const [method, address] = route.split(' ') as [string, string];
        const answer = await askers[asker].fetch(fill(address, rule), { method });
        const said = `${route} as ${asker}`;
        if (may(asker, rule.who)) expect(answer.status(), said).toBe(rule.answers ?? 200);
        else expect(answer.status(), said).toBe(asker === 'nobody' ? 401 : 403);
      }
    });

    test(`actions as ${asker}`, async () => {
      for (const action of actionsOfBuild()) {
        const rule = ACTIONS[action.name];
        // The steward's own session is needed further on, and 'anyone' is shown by nobody being let through.
        if (!rule || (rule.who === 'anyone' && asker !== 'nobody')) continue;
        const said = `${action.name} as ${asker}`;
        const before = database.pragma('data_version', { simple: true });
        const answer = await call(askers[asker], action, rule.takes ?? 'state and form');
        const text = await answer.text();
        expect(answer.status(), said).toBeLessThan(500);
        if (may(asker, rule.who)) {
          expect(text, said).not.toMatch(/sign-in-needed|not-allowed/);
        } else {
          expect(text, said).toContain(asker === 'nobody' ? 'sign-in-needed' : 'not-allowed');
          expect(database.pragma('data_version', { simple: true }), `${said} wrote nothing`).toBe(before);
        }
      }
    });
  }

  const call = (
    context: APIRequestContext,
    action: ServerAction,
    takes: 'state and form' | 'form' | 'nothing',
    origin = server.address,
  ) => {
    const state = { formError: null, fieldErrors: {}, values: {}, attempt: 0 };
    const args = { 'state and form': [state, '$K1'], form: ['$K1'], nothing: [] }[takes];
    return context.post(action.page.replace(/\[\w+\]/g, 'nothing'), {
      headers: { 'Next-Action': action.id, Origin: origin, Accept: 'text/x-component' },
      multipart: { _1_filled: 'in', '0': JSON.stringify(args) },
    });
  };

  const expectNothingOfTheBank = async (body: Promise<string>, said: string) => {
    const names = database.prepare<[], string>('SELECT name FROM Accession').pluck().all();
    const text = await body;
    expect(
      names.filter((name) => text.includes(name)),
      `${said} gives nothing away`,
    ).toEqual([]);
  };

  test('another site’s page gets nothing done with somebody’s cookie', async () => {
    const action = actionsOfBuild().find(({ name }) => name === 'settings/people#addPerson') as ServerAction;
    const before = database.pragma('data_version', { simple: true });
    const answer = await call(askers.steward, action, 'state and form', 'https://attacker.example');
    expect(answer.status()).toBe(403);
    expect(database.pragma('data_version', { simple: true })).toBe(before);
  });

  test('wrong passwords are slowed down, in words', async ({ browser }) => {
    const page = await (await browser.newContext({ baseURL: server.address })).newPage();
    await page.goto('/sign-in');
    const tryOnce = async () => {
      await page.getByLabel('Sign-in name').fill('somebody');
      await page.getByLabel('Password', { exact: true }).fill('not the password');
      await page.getByRole('button', { name: 'Sign in' }).click();
    };
    for (let i = 0; i < 5; i += 1) {
      await tryOnce();
      await expect(page.getByText('do not go together')).toBeVisible();
      await page.reload();
    }
    await tryOnce();
    await expect(page.getByText(/Too many wrong tries\. Wait \d+ seconds/)).toBeVisible();
    await page.context().close();
  });

  test('a label that is opened before signing in leads to its lot afterwards', async ({ browser }) => {
    const { number } = database.prepare<[], { number: string }>('SELECT number FROM Lot LIMIT 1').get() ?? {
      number: '',
    };
    const page = await (await browser.newContext({ baseURL: server.address })).newPage();
    await page.goto(`/l/${number}`);
    await page.getByLabel('Sign-in name').fill('visitor');
    await page.getByLabel('Password', { exact: true }).fill(PASSWORDS.visitor);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await expect(page.getByRole('heading', { level: 1, name: number })).toBeVisible();
    await page.context().close();
  });

  test('a steward shuts a person out at once, and the last steward stays', async ({ browser }) => {
    const { cookies } = await askers.steward.storageState();
    const context = await browser.newContext({ baseURL: server.address });
    await context.addCookies(cookies);
    const page = await context.newPage();
    await page.goto('/settings/people');
    await page.getByRole('link', { name: /The volunteer/ }).click();
    const before = database.pragma('data_version', { simple: true });
    await page.getByRole('button', { name: 'Block this account' }).click();
    await expect(page.getByText('They cannot sign in.')).toBeVisible();
    // What 'wrote nothing' is measured by above does tell when something was written.
    expect(database.pragma('data_version', { simple: true })).not.toBe(before);
    expect((await askers.volunteer.get('/')).headers().location).toBe('/sign-in');
    await page.goto('/settings/people');
    await page.getByRole('link', { name: /Ada/ }).click();
    await page.getByRole('button', { name: 'Block this account' }).click();
    await expect(page.getByText('This is the only steward.')).toBeVisible();
    await page.goto('/settings/account');
    await page.getByRole('button', { name: 'Sign out', exact: true }).click();
    await expect(page.getByRole('heading', { name: 'Sign in' })).toBeVisible();
    expect((await askers.steward.get('/')).headers().location).toBe('/sign-in');
    await context.close();
  });
});

test.describe('on loopback', () => {
  let directory: string;
  let server: RunningServer;

  test.beforeAll(async () => {
    directory = copyOfBank();
    server = await startServer({ dataDirectory: directory, env: { HILUM_TODAY: TEST_TODAY } });
  });
  test.afterAll(async () => {
    await server?.stop();
    rmSync(directory, { recursive: true, force: true });
  });

  /** As a browser cannot be made to: with any Host. */
  const ask = (headers: Record<string, string>, method = 'GET', address = '/') =>
    new Promise<{ status: number; headers: Record<string, unknown>; text: string }>((resolve, reject) => {
      const sent = httpRequest(`${server.address}${address}`, { method, headers }, (answer) => {
        let text = '';
        answer.on('data', (chunk) => {
          text += chunk;
        });
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }));
      });
      sent.on('error', reject);
      sent.end();
    });

  test('whoever sits here is the steward, without sign-in', async ({ page }) => {
    await page.goto(`${server.address}/sign-in`);
    await expect(page.getByRole('heading', { level: 1, name: 'Today' })).toBeVisible();
    await page.goto(`${server.address}/settings/people`);
    await expect(page.getByText('nobody signs in')).toBeVisible();
    expect((await page.goto(`${server.address}/welcome`))?.status()).toBe(404);
  });

  test('a foreign name or page is refused before anything is read', async () => {
    const own = `127.0.0.1:${server.port}`;
    for (const address of ['/', '/collection', '/api/accessions', '/api/health', '/no-such-page']) {
      expect((await ask({ Host: 'attacker.example' }, 'GET', address)).status).toBe(421);
      expect((await ask({ Host: own, Origin: 'https://attacker.example' }, 'GET', address)).status).toBe(403);
      expect((await ask({ Host: own, Origin: 'null' }, 'POST', address)).status).toBe(403);
    }
    expect((await ask({ Host: own })).status).toBe(200);
    expect((await ask({ Host: `localhost:${server.port}` })).status).toBe(200);
    // The name that proxies use for the original Host changes nothing.
    expect((await ask({ Host: 'attacker.example', 'X-Forwarded-Host': own })).status).toBe(421);
  });

  test('a header that skips the proxy in some servers opens nothing', async () => {
    const answer = await ask({ Host: 'attacker.example', 'x-middleware-subrequest': 'proxy:proxy:proxy:proxy:proxy' });
    expect([307, 421]).toContain(answer.status);
  });

  test('the server does not start without TLS where others could reach it', async () => {
    const open = startServer({ dataDirectory: directory, env: { HOST: '127.0.0.1', HOSTNAME: '127.0.0.2' } });
    await expect(open).rejects.toThrow(/without TLS/);
  });

  test('pages keep to themselves', async () => {
    const one = await ask({ Host: `127.0.0.1:${server.port}` });
    const policy = String(one.headers['content-security-policy']);
    const nonce = /'nonce-([^']+)'/.exec(policy)?.[1] as string;
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain("'unsafe-eval'");
    expect(one.text).toContain(`nonce="${nonce}"`);
    expect(one.headers['x-content-type-options']).toBe('nosniff');
    const other = await ask({ Host: `127.0.0.1:${server.port}` });
    expect(String(other.headers['content-security-policy'])).not.toContain(nonce);
  });

  test('an unknown address and an unknown lot are said to be unknown', async ({ page }) => {
    expect((await page.goto(`${server.address}/no-such-page`))?.status()).toBe(404);
    await expect(page.getByText('There is no page at this address.')).toBeVisible();
    expect((await page.goto(`${server.address}/settings/people/nobody`))?.status()).toBe(404);
    await expect(page.getByRole('navigation', { name: 'Places' }).first()).toBeVisible();
  });
});
