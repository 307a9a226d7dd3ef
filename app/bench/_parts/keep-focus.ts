import type { MouseEvent } from 'react';

/**
 * For buttons beside the keyboard's place: a click with the mouse does what it says and leaves the keyboard where it was,
 * so that Enter goes on to the next dish instead of pressing the button once more.
 */
export const keepFocus = (event: MouseEvent) => event.preventDefault();
