import { describe, expect, it } from 'vitest';
import { type CareLine, nextCareDue, packetCareNow } from '@/lib/domain/stock/packet-care';

const line = (on: string, what: CareLine['what'], more: Partial<CareLine> = {}): CareLine => ({
  on,
  what,
  desiccant: null,
  desiccantGrams: null,
  changeDueOn: null,
  ...more,
});
const careNow = (lines: CareLine[]) => packetCareNow(lines, true);
const gel = (on: string, changeDueOn: string | null) =>
  line(on, 'desiccant', { desiccant: 'silica-gel', desiccantGrams: 5, changeDueOn });

describe('how a container is now', () => {
  it('is not known where nothing was written down, and nothing is due', () => {
    const care = careNow([]);
    expect(care).toEqual({ sealedSince: null, openSince: null, desiccant: null });
    expect(nextCareDue(care)).toBeNull();
  });

  it('is as the last seal or opening left it, whatever desiccant came after', () => {
    const sealed = line('2025-01-01', 'sealed');
    const opened = line('2025-03-01', 'opened');
    expect(careNow([sealed, gel('2025-01-02', null)])).toMatchObject({
      sealedSince: '2025-01-01',
      openSince: null,
    });
    expect(careNow([sealed, opened, gel('2025-03-01', null)])).toMatchObject({
      sealedSince: null,
      openSince: '2025-03-01',
    });
    expect(careNow([opened, line('2025-03-01', 'sealed')])).toMatchObject({
      sealedSince: '2025-03-01',
      openSince: null,
    });
  });

  it('is neither sealed nor open in a container that lets air in anyway', () => {
    const lines = [line('2025-01-01', 'sealed'), line('2025-03-01', 'opened'), gel('2025-03-01', '2025-09-01')];
    expect(packetCareNow(lines, false)).toMatchObject({ sealedSince: null, openSince: null });
    expect(nextCareDue(packetCareNow(lines, false))).toEqual({ what: 'desiccant', on: '2025-09-01' });
  });

  it('has the last desiccant that was put in, and none once it was taken out', () => {
    const lines = [gel('2025-01-01', '2025-07-01'), gel('2025-07-02', '2026-01-02')];
    expect(careNow(lines).desiccant).toEqual({
      key: 'silica-gel',
      grams: 5,
      since: '2025-07-02',
      changeDueOn: '2026-01-02',
    });
    expect(careNow([...lines, line('2025-08-01', 'desiccant')]).desiccant).toBeNull();
  });

  it('wants sealing before anything else, then its desiccant changed', () => {
    const put = gel('2025-01-01', '2025-07-01');
    expect(nextCareDue(careNow([put]))).toEqual({ what: 'desiccant', on: '2025-07-01' });
    expect(nextCareDue(careNow([put, line('2025-09-01', 'opened')]))).toEqual({ what: 'seal', on: '2025-09-01' });
    expect(nextCareDue(careNow([gel('2025-01-01', null)]))).toBeNull();
  });
});
