import { TextField } from './form/fields';

/** A password to choose: pasting and password managers are welcome, no signs are prescribed. */
export function NewPasswordField({ name = 'password', label = 'Password' }: { name?: string; label?: string }) {
  return (
    <TextField
      name={name}
      label={label}
      type="password"
      autoComplete="new-password"
      hint="At least 10 characters. Four words that do not belong together are easy to keep and hard to guess; a password manager is better still."
    />
  );
}
