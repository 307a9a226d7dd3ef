import { createHash } from 'node:crypto';
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** What the bench of this build says, and what that of the newer one says in its place. */
export const OLD_WORDS = 'Back to Hilum';
export const NEW_WORDS = 'Back to the newer Hilum';

export interface NewerBuild {
  /** to be removed by whoever asked for it */
  directory: string;
  /** the program that starts it */
  program: string;
  /** what the bench's script is called in this build and in the newer one: '/_next/static/chunks/1f0c.js' */
  oldScript: string;
  newScript: string;
}

/**
 * The built app once more, as a later build of it would be: the bench says something else, so its script has another name,
 * whatever names that script does so by the new one, and the worker is another. All else is the same, as between two builds.
 */
export function makeNewerBuild(): NewerBuild {
  const built = path.resolve('.next/standalone');
  const directory = mkdtempSync(path.join(tmpdir(), 'hilum-newer-'));
  for (const entry of readdirSync(built)) {
    if (entry === 'node_modules') symlinkSync(path.join(built, entry), path.join(directory, entry));
    else cpSync(path.join(built, entry), path.join(directory, entry), COPY);
  }
  const next = path.join(directory, '.next');
  const chunks = path.join(next, 'static', 'chunks');
  const speaking = readdirSync(chunks).filter((file) => file.endsWith('.js') && read(chunks, file).includes(OLD_WORDS));
  const [oldName, another] = speaking;
  if (oldName === undefined || another !== undefined) {
    throw new Error(`makeNewerBuild: one script must say '${OLD_WORDS}', found ${speaking.length}`);
  }
  const text = read(chunks, oldName).replaceAll(OLD_WORDS, NEW_WORDS);
  const newName = `${createHash('sha256').update(text).digest('hex').slice(0, 16)}.js`;
  writeFileSync(path.join(chunks, oldName), text);
  renameSync(path.join(chunks, oldName), path.join(chunks, newName));

  let workers = 0;
  for (const file of textFilesIn(next)) {
    const before = readFileSync(file, 'utf8');
    let after = before.replaceAll(oldName, newName);
    if (file.endsWith(WORKER)) {
      after = after.replace(/(revision:\s*")[\w-]+"/, '$1newer-build"');
      workers += 1;
    }
    if (after !== before) writeFileSync(file, after);
  }
  if (workers !== 1) throw new Error(`makeNewerBuild: one worker must be built, found ${workers}`);
  return {
    directory,
    program: path.join(directory, 'server.js'),
    oldScript: `/_next/static/chunks/${oldName}`,
    newScript: `/_next/static/chunks/${newName}`,
  };
}

/** What servers of this build have put aside while they ran is not part of it. */
const COPY = { recursive: true, verbatimSymlinks: true, filter: (file: string) => !file.includes('route-cache') };
const WORKER = path.join('worker', 'sw.js.body');
const read = (folder: string, file: string) => readFileSync(path.join(folder, file), 'utf8');

function textFilesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(?:js|mjs|json|html|rsc|body|meta|map)$/.test(file) && !file.startsWith('node_modules'))
    .map((file) => path.join(folder, file))
    .filter((file) => statSync(file).isFile());
}
