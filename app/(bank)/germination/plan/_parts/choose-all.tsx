'use client';

/** Ticks or unticks every lot of its group at once. */
export function ChooseAll({ label }: { label: string }) {
  return (
    <label className="flex min-h-11 cursor-pointer items-center gap-3">
      <input
        type="checkbox"
        className="size-6 shrink-0 accent-leaf"
        onChange={({ target }) => {
          for (const box of target.closest('fieldset')?.querySelectorAll<HTMLInputElement>('input[name="lot"]') ?? []) {
            box.checked = target.checked;
          }
        }}
      />
      {label}
    </label>
  );
}
