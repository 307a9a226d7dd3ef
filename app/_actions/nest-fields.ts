/**
 * Makes an object of a form's fields: 'replicates.0.seeds' becomes { replicates: [{ seeds }] }.
 * Files are kept as they are; names that start with '$' belong to the framework.
 */
export function nestFields(formData: FormData): Record<string, unknown> {
  const root: Record<string, unknown> = {};
  for (const [name, value] of formData) {
    if (name.startsWith('$')) continue;
    place(root, name.split('.'), value);
  }
  return root;
}

const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);
const MAX_INDEX = 10_000;

function place(root: Record<string, unknown>, path: string[], value: unknown): void {
  if (path.some((step) => FORBIDDEN.has(step))) return;
  let target: Record<string, unknown> | unknown[] = root;
  path.forEach((step, depth) => {
    const key = Array.isArray(target) ? Number(step) : step;
    if (typeof key === 'number' && !(Number.isInteger(key) && key >= 0 && key < MAX_INDEX)) return;
    const holder = target as Record<string | number, unknown>;
    if (depth === path.length - 1) {
      holder[key] = value;
      return;
    }
    holder[key] ??= /^\d+$/.test(path[depth + 1] as string) ? [] : {};
    target = holder[key] as Record<string, unknown> | unknown[];
  });
}
