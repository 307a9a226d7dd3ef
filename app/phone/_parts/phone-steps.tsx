import type { ReactNode } from 'react';

interface Props {
  /** the kind of phone that asks: its steps are unfolded */
  phone: 'android' | 'iphone' | null;
  android: ReactNode;
  iphone: ReactNode;
}

export function PhoneSteps({ phone, android, iphone }: Props) {
  return (
    <div className="grid gap-2">
      <Steps called="Android phone" isOpen={phone === 'android'}>
        {android}
      </Steps>
      <Steps called="iPhone or iPad" isOpen={phone === 'iphone'}>
        {iphone}
      </Steps>
    </div>
  );
}

function Steps({ called, isOpen, children }: { called: string; isOpen: boolean; children: ReactNode }) {
  return (
    <details open={isOpen} className="rounded-paper border border-rule px-4">
      <summary className="min-h-11 cursor-pointer py-2.5 font-semibold">{called}</summary>
      <div className="grid gap-3 pb-4">{children}</div>
    </details>
  );
}
