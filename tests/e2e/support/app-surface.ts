import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** What the app offers to the outside, read from its files and its build, not from a list. */

const filesNamed = (name: string): string[] =>
  readdirSync('app', { recursive: true, encoding: 'utf8' }).filter((file) => path.basename(file) === name);

/** '(bank)/settings/people/[id]/page.tsx' is '/settings/people/[id]'. */
function addressOf(file: string): string {
  const segments = path.dirname(file).split(path.sep);
  return `/${segments.filter((segment) => segment !== '.' && !/^\(.*\)$/.test(segment)).join('/')}`;
}

export const pagesOnDisk = (): string[] => filesNamed('page.tsx').map(addressOf).sort();

/** 'GET /api/health' for each method that a route.ts exports. */
export function routesOnDisk(): string[] {
  return filesNamed('route.ts')
    .flatMap((file) => {
      const text = readFileSync(path.join('app', file), 'utf8');
      const methods = text.matchAll(/export (?:async function|function|const) (GET|POST|PUT|PATCH|DELETE)\b/g);
      return [...methods].map((method) => `${method[1]} ${addressOf(file)}`);
    })
    .sort();
}

export interface ServerAction {
  id: string;
  /** 'settings/people#addPerson' */
  name: string;
  /** The address of a page that offers it. */
  page: string;
}

interface ManifestEntry {
  workers: Record<string, unknown>;
  filename?: string;
  exportedName?: string;
}

/** Every server action of the build: whoever knows its id can call it, whether or not a form shows it. */
export function actionsOfBuild(): ServerAction[] {
  const manifest = JSON.parse(readFileSync('.next/server/server-reference-manifest.json', 'utf8')) as {
    node: Record<string, ManifestEntry>;
    edge: Record<string, ManifestEntry>;
  };
  return Object.entries({ ...manifest.node, ...manifest.edge })
    .map(([id, { filename, exportedName, workers }]) => {
      const file = (filename ?? '').replace(/^.*?app\//, '');
      const worker = Object.keys(workers)[0] ?? 'app/page';
      return {
        id,
        name: `${addressOf(file).slice(1)}#${exportedName}`,
        page: addressOf(worker.replace(/^app\//, '')),
      };
    })
    .sort((one, other) => one.name.localeCompare(other.name));
}
