/** What a browser means when it does not give the camera, and what to do. */
const TROUBLES: Readonly<Record<string, string>> = {
  NotAllowedError:
    'The browser does not let this page use the camera. Allow it in the browser’s settings for this address (often behind the lock beside the address), then start again. Or take a picture, or type the number.',
  NotFoundError: 'No camera was found. Choose a picture of the label, or type its number.',
  NotReadableError: 'Another app is using the camera. Close it and start again.',
};

export function cameraTrouble(error: unknown): string {
  const name = error instanceof Error ? error.name : '';
  return TROUBLES[name] ?? 'The camera did not start. Take a picture of the label, or type its number.';
}
