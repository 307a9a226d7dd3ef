/** Input rules for people who sign in: names, passwords, codes. */
import { z } from 'zod';
import { ROLES } from '../domain/people/roles';
import { blankToUndefined, textUpTo } from './field-schemas';

/** characters of a sign-in name */
export const SIGN_IN_NAME_LENGTH = { min: 3, max: 30 } as const;

/** characters of a password: long enough to outlast guessing, short enough that nobody can make hashing a burden */
const PASSWORD_LENGTH = { min: 10, max: 128 } as const;

/** characters of the name by which a person is known on every screen and in the log of changes */
const PERSON_NAME_LENGTH = 60;
const FILL_IN = 'Fill this in.';
const SIGN_IN_NAME = /^[a-z0-9][a-z0-9._-]*$/;
/** Fewer different characters than this is a pattern, not a password. */
const FEWEST_DIFFERENT_CHARACTERS = 5;
const FIRST_GUESSES = ['1234567890', 'password', 'qwertyuiop', 'letmein', 'hilum', 'seedbank'];

/** True for a name that someone can sign in with: 3 to 30 of a-z, 0-9, dot, hyphen, underscore; letter or digit first. */
export function isSignInName(value: string): boolean {
  return value.length >= SIGN_IN_NAME_LENGTH.min && value.length <= SIGN_IN_NAME_LENGTH.max && SIGN_IN_NAME.test(value);
}

/** Capitals make no difference in a sign-in name. Checked in tests/schemas/person.test.ts */
export const signInNameSchema = z.preprocess(
  (value) => (typeof value === 'string' ? blankToUndefined(value.toLowerCase()) : value),
  z
    .string({ error: FILL_IN })
    .refine(isSignInName, `Use ${SIGN_IN_NAME_LENGTH.min} to ${SIGN_IN_NAME_LENGTH.max} of a-z, 0-9, dot and hyphen.`),
);

export const personNameSchema = textUpTo(PERSON_NAME_LENGTH);

/** A password that somebody chooses. Spaces count and are kept. Checked in tests/schemas/person.test.ts */
export const newPasswordSchema = z
  .string({ error: FILL_IN })
  .min(PASSWORD_LENGTH.min, `Use at least ${PASSWORD_LENGTH.min} characters.`)
  .max(PASSWORD_LENGTH.max, `Use at most ${PASSWORD_LENGTH.max} characters.`)
  .refine((value) => !isFirstGuess(value), 'That is one of the first that anybody would try. Choose another.');

function isFirstGuess(password: string): boolean {
  const letters = password.toLowerCase();
  const bare = letters.replace(/[^a-z]/g, '');
  return (
    new Set(letters).size < FEWEST_DIFFERENT_CHARACTERS ||
    FIRST_GUESSES.some((guess) => letters === guess || bare === guess || letters.startsWith('1234567890'))
  );
}

export const roleSchema = z.enum(ROLES, { error: 'Choose a role.' });

export const personIdSchema = z.string({ error: 'Choose a person.' }).min(1).max(100);

/** A code as it is typed; whether it is the right one is looked up. */
export const typedCodeSchema = z.preprocess(blankToUndefined, z.string({ error: FILL_IN }).max(100, 'Check the code.'));

/** A password as it is typed to get in; whether it is the right one is looked up. */
export const typedPasswordSchema = z
  .string({ error: FILL_IN })
  .min(1, FILL_IN)
  .max(PASSWORD_LENGTH.max * 8);

/** A sign-in name as it is typed to get in: any text, so that a wrong one is answered like an unknown one. */
const typedNameSchema = z.preprocess(blankToUndefined, z.string({ error: FILL_IN }).max(200, FILL_IN));

export const signInSchema = z.object({ signInName: typedNameSchema, password: typedPasswordSchema });

/** Who comes with a steward's code; the new password is the command's to check. */
export const codeBearerSchema = z.object({ signInName: typedNameSchema, code: typedCodeSchema });

export const setupCodeSchema = z.object({ setupCode: typedCodeSchema });
