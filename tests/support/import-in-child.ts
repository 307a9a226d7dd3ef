/** Runs one import in a process of its own, so that a test can kill it. Arguments: number of rows. */
import { runImport } from '@/lib/server/commands/run-import';
import { progressOf } from '@/lib/server/import/import-progress';
import { uploadText } from './import-file';
import { STEWARD } from './people';

const rows = Array.from({ length: Number(process.argv[2]) }, (_, index) => `C-${index};Variety ${index};Leek`);
const upload = await uploadText('accessions', `Number;Name;Crop\n${rows.join('\n')}\n`);
const watch = () => {
  const progress = progressOf(upload.importId);
  if (progress) process.stdout.write(`${progress.phase} ${progress.done}\n`);
  setImmediate(watch);
};
watch();
await runImport(STEWARD, upload);
process.stdout.write('imported\n');
process.exit(0);
