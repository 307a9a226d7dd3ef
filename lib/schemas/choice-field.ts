/** Fields of forms that are chosen or ticked, not typed. */
import { z } from 'zod';
import { blankToUndefined } from './field-schemas';

/**
 * One of a fixed list.
 *
 * @param keys  the members, a constant of lib/domain
 * @param what  what is chosen, as said in the message: 'container'
 * @returns a schema giving one of the keys
 */
export function choice<const Keys extends readonly [string, ...string[]]>(keys: Keys, what: string) {
  return z.preprocess(blankToUndefined, z.enum(keys, { error: `Choose the ${what}.` }));
}

/** A tick box: a browser sends 'on' when it is ticked and nothing when it is not. */
export const tickBox = z.preprocess((value) => value === 'on' || value === true, z.boolean());

/**
 * A row of the collection that the form points at.
 *
 * @param what  what is chosen, as said in the message: 'crop'
 * @returns a schema giving its id; whether it exists is the command's to check
 */
export function idOf(what: string) {
  return z.preprocess(blankToUndefined, z.string({ error: `Choose the ${what}.` }).max(100, `Choose the ${what}.`));
}

/** The version of a record that an edit form was opened on: a save over a newer one is refused. */
export const versionField = z.coerce.number().int().min(1);
