'use client';

import { type ChangeEvent, useId, useState } from 'react';

/** A photograph of a label: on a phone this opens the camera, also on plain http. The picture stays on the device. */
export function PhotoField({ onCode }: { onCode: (code: string) => void }) {
  const id = useId();
  const [said, setSaid] = useState('');

  const read = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const [file] = target.files ?? [];
    if (!file) return;
    setSaid('Reading the picture …');
    setSaid((await codeIn(file, onCode)) ?? '');
    // The same picture may be chosen again.
    target.value = '';
  };

  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="font-semibold">
        Take a picture of the label
      </label>
      <input
        id={id}
        type="file"
        accept="image/*"
        capture="environment"
        aria-describedby={`${id}-said`}
        onChange={(event) => void read(event)}
        className="field file:mr-4 file:cursor-pointer file:border-0 file:bg-sunk file:px-3 file:py-1.5 file:font-semibold file:text-ink"
      />
      <p id={`${id}-said`} role="status" className="text-sm font-semibold empty:hidden">
        {said}
      </p>
    </div>
  );
}

/** @returns what is wrong, or null when a code was found */
async function codeIn(file: File, onCode: (code: string) => void): Promise<string | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return 'This file is not a picture that the browser can open. Choose a JPEG or PNG.';
  }
  const { PictureReader } = await import('./decode-picture');
  const code = await new PictureReader().read(picture, true);
  picture.close();
  if (code === null)
    return 'No code was found in it. Go closer, hold still, and keep the white edge of the code in the picture.';
  onCode(code);
  return null;
}
