import { expect, it } from 'vitest';
import { packetRoleLabel } from '@/lib/domain/stock/packet-roles';

it('a role is called by its label, and one that is not in the list by what was stored', () => {
  expect(packetRoleLabel('safety-duplicate')).toBe('safety duplicate');
  expect(packetRoleLabel('exhibit')).toBe('exhibit');
});
