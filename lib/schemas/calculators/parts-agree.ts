/** Parts of a question that must go together: given all or none, and not more germinated than set. */

/** Whatever can take a complaint about a field; zod hands one to a refinement. */
interface Refusing {
  addIssue(issue: { code: 'custom'; path: string[]; message: string }): void;
}

/**
 * Says beside a field what is wrong with it.
 *
 * @param context  of a refinement
 * @param field    its name in the question
 * @param message  what to write instead
 * Checked in tests/schemas/parts-agree.test.ts
 */
export function refuse(context: Refusing, field: string, message: string): void {
  context.addIssue({ code: 'custom', path: [field], message });
}

export const MORE_THAN_SET = 'More seeds grew than were set: check both.';

/**
 * Whether parts that belong together are all filled in, or all left empty.
 *
 * @param parts  as read; undefined where left empty
 * Checked in tests/schemas/parts-agree.test.ts
 */
export function allOrNone(...parts: readonly (number | undefined)[]): boolean {
  const given = parts.filter((part) => part !== undefined);
  return given.length === 0 || given.length === parts.length;
}

/**
 * Refuses a test of which one figure is missing, or of which more grew than were set.
 *
 * @param context  of a refinement
 * @param grew     the field of the seeds that grew and what it holds, undefined where left empty
 * @param set      the same of the seeds set
 * @param test     as messages call it: 'the other test'
 * Checked in tests/schemas/parts-agree.test.ts
 */
export function refuseHalfTest(context: Refusing, { grew, set, test }: HalfTest): void {
  if (!allOrNone(grew.count, set.count)) {
    const missing = grew.count === undefined ? grew : set;
    refuse(context, missing.field, `Give both figures of ${test}, or neither.`);
  } else if ((grew.count ?? 0) > (set.count ?? 0)) refuse(context, grew.field, MORE_THAN_SET);
}

interface Part {
  field: string;
  count: number | undefined;
}

interface HalfTest {
  grew: Part;
  set: Part;
  test: string;
}
