import { expect, it } from 'vitest';
import { fastProbit } from '../../../lib/domain/longevity/fast-probit';
import { normalQuantile } from '../../../lib/domain/statistics/normal-distribution';

it('is the exact probit to within 1.2e-9 of its size, from far out on one side to far out on the other', () => {
  for (let exponent = -300; exponent <= -1; exponent += 0.25) {
    const chance = 10 ** exponent;
    expect(Math.abs(fastProbit(chance) / normalQuantile(chance) - 1)).toBeLessThan(1.2e-9);
  }
  for (let i = 1; i < 20_000; i += 1) {
    const chance = i / 20_000;
    const exact = normalQuantile(chance);
    expect(Math.abs(fastProbit(chance) - exact)).toBeLessThan(1.2e-9 * Math.max(Math.abs(exact), 0.05));
  }
  for (const rest of [1e-15, 1e-12, 1e-6, 1e-3]) {
    expect(Math.abs(fastProbit(1 - rest) / normalQuantile(1 - rest) - 1)).toBeLessThan(1.2e-9);
  }
});
