import 'server-only';
import { createHash } from 'node:crypto';
import { whyNotText } from '@/lib/domain/spreadsheet/file-kind';
import { uploadReadingsSchema } from '@/lib/schemas/reading-import';
import { notFound } from '../app-error';
import { newId } from '../new-id';
import { keepLoggerFile } from '../readings/logger-files';
import { guessLoggerFile } from '../readings/read-logger-file';
import { defineCommand } from './command';
import { fieldError } from './field-error';

/** Takes a logger's file in for looking at. Nothing of it becomes a reading yet. */
export const uploadReadings = defineCommand({
  name: 'upload-readings',
  role: 'volunteer',
  schema: uploadReadingsSchema,
  async run({ tx, person, audit }, { storeId, fileName, bytes }) {
    const store = await tx.store.findUnique({ where: { id: storeId }, select: { name: true } });
    if (!store) throw notFound('This store');
    const notText = whyNotText(bytes);
    if (notText) throw fieldError({ file: notText });
    const guess = await guessLoggerFile(bytes);
    if (!guess.ok) throw fieldError({ file: guess.reason });
    const uploadId = newId();
    await keepLoggerFile(uploadId, bytes);
    const fileHash = createHash('sha256').update(bytes).digest('hex');
    const data = { storeId, kind: 'file', uploadId, fileName, fileHash, status: 'uploaded', byId: person.id };
    const { id } = await tx.readingImport.create({ data, select: { id: true } });
    await audit({
      entity: 'reading import',
      entityId: String(id),
      summary: `Uploaded logger file ${fileName} for store ${store.name}`,
    });
    return { id, storeId };
  },
});
