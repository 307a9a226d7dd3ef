import { describe, expect, it } from 'vitest';
import { newPasswordSchema, signInNameSchema, typedPasswordSchema } from '../../lib/schemas/person';

const message = (schema: typeof newPasswordSchema | typeof signInNameSchema, value: unknown) =>
  schema.safeParse(value).error?.issues[0]?.message ?? 'taken';

describe('sign-in name', () => {
  it('takes capitals and spaces round it as if they were not there', () => {
    expect(signInNameSchema.parse(' Ada.Reed ')).toBe('ada.reed');
  });

  it.each(['abc', 'a-b_c.1', '9lives', 'x'.repeat(30)])('takes %s', (name) => {
    expect(message(signInNameSchema, name)).toBe('taken');
  });

  it.each(['ab', 'x'.repeat(31), '.abc', '-abc', 'a b c', 'zoë', 'a@b.c', 'a/b/c', '<b>ada'])('refuses %s', (name) => {
    expect(message(signInNameSchema, name)).toMatch(/a-z, 0-9/);
  });

  it('asks for a name that is missing', () => {
    expect(message(signInNameSchema, '  ')).toBe('Fill this in.');
    expect(message(signInNameSchema, undefined)).toBe('Fill this in.');
  });
});

describe('new password', () => {
  it('needs ten characters, and no kind of them in particular', () => {
    expect(message(newPasswordSchema, 'bean field')).toBe('taken');
    expect(message(newPasswordSchema, 'bean fiel')).toMatch(/at least 10/);
    expect(message(newPasswordSchema, `bean field${'x'.repeat(118)}`)).toBe('taken');
    expect(message(newPasswordSchema, `bean field${'x'.repeat(119)}`)).toMatch(/at most 128/);
  });

  it('keeps spaces at its ends', () => {
    expect(newPasswordSchema.parse(' bean field ')).toBe(' bean field ');
  });

  it.each(['1234567890', '12345678901', 'Password123!', 'aaaaaaaaaaaa', '1212121212', 'QWERTYUIOP', 'Seedbank-2026'])(
    'refuses %s, which anybody would try first',
    (password) => expect(message(newPasswordSchema, password)).toMatch(/first that anybody/),
  );
});

it('a password typed to get in need not follow today’s rules', () => {
  expect(typedPasswordSchema.safeParse('old').success).toBe(true);
  expect(typedPasswordSchema.safeParse('').success).toBe(false);
});
