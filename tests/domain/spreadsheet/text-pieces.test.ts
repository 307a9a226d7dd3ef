import fc from 'fast-check';
import { expect, it } from 'vitest';
import { decodeText, textPieces } from '@/lib/domain/spreadsheet/decode-text';

const utf16 = (text: string) => Uint8Array.from(Buffer.from(`\uFEFF${text}`, 'utf16le'));
const windows = (text: string) => Uint8Array.from(Buffer.from(text, 'latin1'));

it('pieces make the text that decoding at once gives, wherever they are cut', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: fc.constantFrom('a', '°', '€', '\n', ';', '−', '🌱') }),
      fc.constantFrom('utf-8', 'utf-16', 'windows-1252'),
      fc.integer({ min: 1, max: 9 }),
      (text, encoding, pieceBytes) => {
        const bytes =
          encoding === 'utf-8'
            ? new TextEncoder().encode(text)
            : encoding === 'utf-16'
              ? utf16(text)
              : windows(`${text.replaceAll(/[^\n;a]/g, '°')}\u0080°`);
        const whole = decodeText(bytes);
        expect([...textPieces(bytes, pieceBytes)].join('')).toBe(whole.ok ? whole.text : null);
      },
    ),
  );
});
