'use client';

export function PrintButton() {
  return (
    <button type="button" className="button main" onClick={() => window.print()}>
      Print
    </button>
  );
}
