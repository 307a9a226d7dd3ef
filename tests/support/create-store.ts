import { createStore } from '@/lib/server/commands/create-store';
import { STEWARD } from './people';

let made = 0;

/** A store through its command: a fridge at 4 °C unless told otherwise. */
export async function makeStore(overrides: Record<string, unknown> = {}): Promise<{ id: string; name: string }> {
  made += 1;
  const name = `Fridge ${made}`;
  const input = { name, kind: 'fridge', targetTemperatureC: '4', ...overrides };
  return { ...(await createStore(STEWARD, input)), name: String(input.name) };
}
