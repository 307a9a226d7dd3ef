'use client';

import { useFormState } from './form';

/**
 * The version of the record that this form was opened on. After somebody else's change was shown, the version that
 * includes it: sending the form again then counts.
 */
export function VersionField({ version }: { version: number | string }) {
  const { state } = useFormState();
  const value = state.values.version ?? String(version);
  return <input key={value} type="hidden" name="version" defaultValue={value} />;
}
