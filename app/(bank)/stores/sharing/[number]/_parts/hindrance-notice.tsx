'use client';

import type { ReactNode } from 'react';
import { useFormState } from '@/app/_components/form/form';
import { Notice } from '@/app/_components/notice';

interface Props {
  /** the line, as refusals name it */
  name: string;
  /** what stands against it as the page was made; null: nothing */
  sentence: string | null;
  children?: ReactNode;
}

/** What stands against a line: a caution before it is sent, and the error when that was refused because of it. */
export function HindranceNotice({ name, sentence, children }: Props) {
  const { state } = useFormState();
  const refused = state.fieldErrors[name];
  const words = sentence ?? refused;
  if (!words) return null;
  return (
    <Notice kind={refused ? 'error' : 'caution'}>
      {words} {children}
    </Notice>
  );
}
