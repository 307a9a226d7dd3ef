import { expect, test } from 'vitest';
import { CONTAINER_KEYS, CONTAINERS, isHermetic } from '../../../lib/domain/stock/containers';

test('sealed foil and rubber-sealed glass keep their own moisture; paper, cloth and thin plastic follow the air', () => {
  expect(['foil-pouch', 'glass-jar', 'screw-cap-tube'].map(isHermetic)).toEqual([true, true, true]);
  expect(['paper-envelope', 'cloth-bag', 'plastic-bag'].map(isHermetic)).toEqual([false, false, false]);
});

test('every container has its own key and label', () => {
  expect(new Set(CONTAINER_KEYS).size).toBe(CONTAINERS.length);
  expect(new Set(CONTAINERS.map(({ label }) => label)).size).toBe(CONTAINERS.length);
});

test('refuses a container it does not know', () => {
  expect(() => isHermetic('shoebox')).toThrow(/shoebox/);
});
