/** Pages that a form may be sent back to: those where seed is kept. */
const OUR_PAGES = /^\/(?:collection|stores)(?:\/[^\\]*)?$/;

/**
 * Where a form goes on: the page that it names, if it is one of ours. An address of another site, '//' in front of one,
 * is not.
 *
 * @param data  the form; its field `back`
 * @param otherwise  where to go when it names no page of ours
 * Checked in tests/app/way-back.test.ts
 */
export function wayBack(data: FormData, otherwise: string): string {
  const back = data.get('back');
  return typeof back === 'string' && OUR_PAGES.test(back) ? back : otherwise;
}
