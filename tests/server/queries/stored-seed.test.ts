import { expect, it } from 'vitest';
import { connections } from '@/lib/server/database/connections';
import { loadCropJudging } from '@/lib/server/judging/load-crop-judging';
import { findCropsWithConstants, getStoredSeed } from '@/lib/server/queries/stored-seed';
import { cropIdOf } from '@/tests/support/create-accession';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

const constantsId = (name: string) =>
  (connections().bulk.prepare('SELECT "id" FROM "LongevityConstants" WHERE "name" = ?').get(name) as { id: string }).id;

it('reckons with the same seed as the judging of lots, for every crop', async () => {
  const judged = loadCropJudging(connections().bulk, 'all');
  const crops = await findCropsWithConstants();
  expect(crops.length).toBeGreaterThan(20);
  for (const { id, own } of crops) {
    const stored = await getStoredSeed({ crop: id });
    const judging = judged.get(id);
    expect(stored?.seed, stored?.cropName ?? id).toEqual(judging?.seed);
    expect(stored?.borrowed).toBe(judging?.constantsBorrowed);
    expect(own).toBe(!judging?.constantsBorrowed);
  }
});

it('names what is borrowed, and brings the standard errors where there are some', async () => {
  const leek = await getStoredSeed({ crop: cropIdOf('Leek') });
  expect(leek).toMatchObject({ cropName: 'Leek', borrowed: true, constants: { name: 'Onion', standardErrorKE: null } });
  expect(leek?.borrowedBecause).toBeTruthy();
  const potato = await getStoredSeed({ constants: constantsId('Potato (true seed)') });
  expect(potato).toMatchObject({ cropName: null, borrowed: false, constants: { standardErrorKE: 0.397 } });
});

it('takes constants chosen in place of the crop’s own as borrowed, its own named again as its own', async () => {
  const chosen = await getStoredSeed({ crop: cropIdOf('Onion'), constants: constantsId('Wheat') });
  expect(chosen).toMatchObject({
    cropName: 'Onion',
    borrowed: true,
    borrowedBecause: null,
    constants: { name: 'Wheat' },
  });
  const own = await getStoredSeed({ crop: cropIdOf('Onion') });
  const again = await getStoredSeed({ crop: cropIdOf('Onion'), constants: own?.constants.id });
  expect(again).toEqual(own);
});

it('finds the oil of the crop to which constants belong, when no crop is named', async () => {
  const onion = await getStoredSeed({ crop: cropIdOf('Onion') });
  const alone = await getStoredSeed({ constants: onion?.constants.id });
  expect(alone?.oilKnown).toBe(true);
  expect(alone?.seed).toEqual(onion?.seed);
});

it('has no seed for what does not exist', async () => {
  expect(await getStoredSeed({})).toBeNull();
  expect(await getStoredSeed({ crop: 'no-such-crop', constants: 'no-such-constants' })).toBeNull();
});
