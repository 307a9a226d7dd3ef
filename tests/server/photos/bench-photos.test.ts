import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { addBenchPhoto } from '@/lib/server/commands/add-bench-photo';
import { connections } from '@/lib/server/database/connections';
import { newId } from '@/lib/server/new-id';
import { keepPhoto, readPhoto } from '@/lib/server/photos/photo-files';
import { preparePhoto } from '@/lib/server/photos/prepare-photo';
import { getTrayPhoto } from '@/lib/server/queries/tray-photo';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { VISITOR, VOLUNTEER } from '@/tests/support/people';
import { refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

const bank = useTestBank();
beforeAll(() => createLotWithPacket());

const plain = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: { r: 40, g: 120, b: 60 } } });

describe('a picture from a phone', () => {
  it('is kept upright, at most 1600 pixels long, as WebP, without where and with what it was taken', async () => {
    const bytes = await plain(3000, 2000)
      .withExif({
        IFD0: { Make: 'A phone', Orientation: '6' },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '57/1 7/1 0/1' },
      })
      .withMetadata({ orientation: 6 })
      .jpeg()
      .toBuffer();
    expect((await sharp(bytes).metadata()).exif).toBeDefined();
    const prepared = await preparePhoto(bytes);
    if (!prepared.ok) throw new Error(prepared.message);
    // Lying on its side in the file, upright in the hand.
    expect([prepared.width, prepared.height]).toEqual([1067, 1600]);
    const kept = await sharp(prepared.bytes).metadata();
    expect(kept).toMatchObject({ format: 'webp', width: 1067, height: 1600 });
    expect([kept.exif, kept.xmp, kept.iptc, kept.orientation]).toEqual([undefined, undefined, undefined, undefined]);
  });

  it('is not made larger', async () => {
    for (const bytes of [await plain(320, 240).png().toBuffer(), await plain(320, 240).webp().toBuffer()]) {
      expect(await preparePhoto(bytes)).toMatchObject({ ok: true, width: 320, height: 240 });
    }
  });

  it('is refused in words when it is HEIC', async () => {
    const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic\0\0\0\0mif1heic'), Buffer.alloc(64)]);
    expect(await preparePhoto(heic)).toMatchObject({ ok: false, message: /HEIC.*JPEG/ });
  });

  it.each([
    ['a drawing that could carry a script', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>')],
    ['a page', Buffer.from('<!doctype html>')],
    ['nothing', Buffer.alloc(0)],
  ])('is refused when it is %s', async (_, bytes) => {
    expect(await preparePhoto(bytes)).toMatchObject({ ok: false, message: /JPEG, PNG and WebP/ });
  });

  it('is refused when it is cut off, or claims to be larger than any camera makes it', async () => {
    const whole = await plain(2000, 1500).jpeg().toBuffer();
    expect(await preparePhoto(whole.subarray(0, whole.length / 3))).toMatchObject({ ok: false, message: /damaged/ });
    const huge = await plain(10_000, 9_000).png().toBuffer();
    expect(await preparePhoto(huge)).toMatchObject({ ok: false, message: /too large/ });
  });
});

describe('a photograph of a dish', () => {
  const photo = async (overrides: Record<string, unknown> = {}) => {
    const tray = await createTray({ lotNumber: 'L-2020-001', takesSeed: false });
    return {
      ...{ id: newId(), deviceId: 'phone-by-the-door', trayId: tray.id, dish: 2, on: '2026-11-25' },
      ...{ madeAt: '2026-11-25T08:00:00.000Z', width: 1600, height: 1200, bytes: 90_000, ...overrides },
    };
  };

  it('is written down once, however often it comes', async () => {
    const sent = await photo();
    expect(getTrayPhoto(sent.id)).toBeNull();
    expect(await addBenchPhoto(VOLUNTEER, sent)).toEqual({ id: sent.id, outcome: 'kept' });
    expect(lastAuditLine()).toMatchObject({
      entity: 'tray',
      entityId: sent.trayId,
      summary: /^Photographed dish 2 of tray/,
    });
    const rows = countRows('TrayNote');
    // Drawn anew it may have another size.
    expect(await addBenchPhoto(VOLUNTEER, { ...sent, bytes: 91_000 })).toEqual({ id: sent.id, outcome: 'known' });
    expect(await addBenchPhoto(VOLUNTEER, { ...sent, dish: 1 })).toMatchObject({ outcome: 'refused' });
    expect(countRows('TrayNote')).toBe(rows);
    expect(getTrayPhoto(sent.id)).toEqual({ id: sent.id });
  });

  it('is refused for what cannot be', async () => {
    for (const [overrides, message] of [
      [{ dish: 3 }, /no such dish/],
      [{ trayId: 'no-such-tray' }, /not in the collection/],
      [{ on: '2026-11-17' }, /was set on/],
      [{ on: '2026-11-27' }, /still to come/],
    ] as const) {
      expect(await addBenchPhoto(VOLUNTEER, await photo(overrides))).toMatchObject({ outcome: 'refused', message });
    }
    expect((await refusal(addBenchPhoto(VISITOR, await photo()))).code).toBe('not-allowed');
  });

  it('lies in the data folder under its id, whole, and nowhere else', async () => {
    const id = newId();
    await keepPhoto(id, Buffer.from('picture'));
    const folder = path.join(bank.directory, 'photos');
    expect(readdirSync(folder)).toEqual([`${id}.webp`]);
    expect(readFileSync(path.join(folder, `${id}.webp`), 'utf8')).toBe('picture');
    expect(String(await readPhoto(id))).toBe('picture');
    expect(await readPhoto(newId())).toBeNull();
    await expect(readPhoto('../hilum')).rejects.toThrow(RangeError);
    await expect(keepPhoto('../../etc/x', Buffer.alloc(1))).rejects.toThrow(RangeError);
    expect(existsSync(path.join(bank.directory, 'x.webp'))).toBe(false);
  });

  it('is not shown by the id of a note', async () => {
    const sent = await photo();
    connections()
      .bulk.prepare(
        `INSERT INTO "TrayNote" ("id", "trayId", "on", "kind", "text", "deviceId", "madeAt", "byId", "byName")
         VALUES (?, ?, '2026-11-25', 'note', 'mould', 'phone', '2026-11-25T08:00:00.000+00:00', 'x', 'X')`,
      )
      .run(sent.id, sent.trayId);
    expect(getTrayPhoto(sent.id)).toBeNull();
  });
});
