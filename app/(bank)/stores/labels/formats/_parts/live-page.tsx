'use client';

import { useEffect, useRef, useState } from 'react';
import { completeFormat, type FormatGiven } from '@/lib/domain/labels/complete-format';
import { formatProblems } from '@/lib/domain/labels/format-problems';
import { labelCells } from '@/lib/domain/labels/label-cells';
import type { LabelFormat } from '@/lib/domain/labels/label-format';
import { numberReadings } from '@/lib/domain/spreadsheet/number-format';

/** The page that the form around it describes, drawn anew at every key. */
export function LivePage({ format: saved }: { format: LabelFormat | null }) {
  const box = useRef<HTMLDivElement>(null);
  const [format, setFormat] = useState<LabelFormat | null>(saved);
  useEffect(() => {
    const form = box.current?.closest('form');
    if (!form) return;
    const read = () => setFormat(formatOf(new FormData(form)));
    read();
    form.addEventListener('input', read);
    return () => form.removeEventListener('input', read);
  }, []);
  const problems = format ? formatProblems(format) : [];
  return (
    <div ref={box} className="grid gap-2">
      <p className="font-semibold">The page</p>
      {format ? (
        <PageDrawing format={format} />
      ) : (
        <p className="quiet">Write the width and height of a label, and the page is drawn here.</p>
      )}
      <div aria-live="polite" className="text-sm">
        {problems.map(({ field, message }) => (
          <p key={field} className="font-semibold text-madder">
            {message}
          </p>
        ))}
        {format && problems.length === 0 && (
          <p className="quiet">
            {format.kind === 'roll'
              ? `One label after the other, ${format.labelWidthMm} × ${format.labelHeightMm} mm.`
              : `${format.columns * format.rows} labels of ${format.labelWidthMm} × ${format.labelHeightMm} mm. The dotted line is where words and code end.`}
          </p>
        )}
      </div>
    </div>
  );
}

function PageDrawing({ format }: { format: LabelFormat }) {
  const { pageWidthMm: width, pageHeightMm: height, labelWidthMm, labelHeightMm } = format;
  return (
    <svg
      role="img"
      aria-label={`A page of ${width} × ${height} mm with ${format.columns * format.rows} labels`}
      viewBox={`0 0 ${width} ${height}`}
      className="block h-auto w-full overflow-visible border border-rule"
      style={{ background: 'white' }}
    >
      {labelCells(format).map(({ xMm, yMm, insets }) => (
        <g key={`${xMm} ${yMm}`} fill="none" strokeWidth={width / 300}>
          <rect x={xMm} y={yMm} width={labelWidthMm} height={labelHeightMm} stroke="#444" />
          <rect
            x={xMm + insets.left}
            y={yMm + insets.top}
            width={Math.max(0, labelWidthMm - insets.left - insets.right)}
            height={Math.max(0, labelHeightMm - insets.top - insets.bottom)}
            stroke="#888"
            strokeDasharray={`${width / 150} ${width / 150}`}
          />
        </g>
      ))}
    </svg>
  );
}

/** More than any sheet has; a slip of the pen must not draw a million rectangles. */
const MOST_ACROSS = 30;

function formatOf(data: FormData): LabelFormat | null {
  const number = (name: string) => {
    const value = numberReadings(String(data.get(name) ?? '').trim())[0]?.value;
    return value !== undefined && value >= 0 ? value : undefined;
  };
  const count = (name: string) => Math.min(MOST_ACROSS, Math.max(1, Math.floor(number(name) ?? 1)));
  const [labelWidthMm, labelHeightMm] = [number('labelWidthMm'), number('labelHeightMm')];
  if (!labelWidthMm || !labelHeightMm) return null;
  return completeFormat({
    kind: data.get('kind') as FormatGiven['kind'],
    code: 'qr',
    labelWidthMm,
    labelHeightMm,
    pageWidthMm: number('pageWidthMm') || undefined,
    pageHeightMm: number('pageHeightMm') || undefined,
    columns: count('columns'),
    rows: count('rows'),
    marginLeftMm: number('marginLeftMm'),
    marginTopMm: number('marginTopMm'),
    pitchXMm: number('pitchXMm') || undefined,
    pitchYMm: number('pitchYMm') || undefined,
  });
}
