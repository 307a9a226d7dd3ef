import 'server-only';
import path from 'node:path';
import { Canvas, Document, Page, renderToBuffer } from '@react-pdf/renderer';
import { createElement } from 'react';
import { darkRuns } from '@/lib/domain/labels/dark-runs';
import type { LabelDrawing, PlacedCode } from '@/lib/domain/labels/label-drawing';
import type { LabelPage } from '@/lib/domain/labels/layout-pages';
import type { Face, Weight } from '@/lib/domain/labels/measure-text';

const POINTS_PER_MM = 72 / 25.4;
const FRAME_LINE_PT = 0.25 * POINTS_PER_MM;
/** next.config.ts puts them beside the built server. */
const FONTS = path.resolve('lib/server/labels/fonts');
const fontFile = (face: Face, weight: Weight) => path.join(FONTS, `${face}-${weight}.ttf`);

/** What is used of the canvas that react-pdf hands over; its own type says nothing of fonts. */
interface Painter {
  font(file: string): Painter;
  fontSize(points: number): Painter;
  text(text: string, x: number, y: number, options: { lineBreak: false; baseline: 'alphabetic' }): Painter;
  rect(x: number, y: number, width: number, height: number): Painter;
  fill(colour: string): Painter;
  fillColor(colour: string): Painter;
  lineWidth(points: number): Painter;
  stroke(colour: string): Painter;
}

/**
 * The pages as a PDF. Each is drawn on one canvas: laid out by react-pdf itself, five hundred labels take fifty times as
 * long. Text is text, and the codes are shapes, so both are as sharp as the printer.
 *
 * Checked in tests/server/labels/labels-read-back.test.ts
 */
export async function labelsPdf(pages: readonly LabelPage[]): Promise<Buffer> {
  const children = pages.map((page, index) => {
    const size = { width: page.widthMm * POINTS_PER_MM, height: page.heightMm * POINTS_PER_MM };
    const paint = (painter: unknown) => {
      for (const { xMm, yMm, drawing } of page.labels) drawLabel(painter as Painter, drawing, xMm, yMm);
      return null;
    };
    // The canvas has no edge of its own: its size only keeps react-pdf from turning the page.
    const canvas = createElement(Canvas, {
      paint,
      style: { position: 'absolute', left: 0, top: 0, width: 1, height: 1 },
    });
    return createElement(Page, { key: index, size }, canvas);
  });
  return renderToBuffer(createElement(Document, { title: 'Labels', language: 'en' }, children));
}

function drawLabel(painter: Painter, drawing: LabelDrawing, xMm: number, yMm: number): void {
  drawCode(painter, drawing.code, xMm, yMm);
  for (const frame of drawing.frames) {
    painter
      .rect(points(xMm + frame.xMm), points(yMm + frame.yMm), points(frame.widthMm), points(frame.heightMm))
      .lineWidth(FRAME_LINE_PT)
      .stroke('black');
  }
  painter.fillColor('black');
  for (const { xMm: left, baselineMm, sizePt, weight, runs } of drawing.texts) {
    let at = xMm + left;
    for (const { face, text, widthMm } of runs) {
      painter
        .font(fontFile(face, weight))
        .fontSize(sizePt)
        .text(text, points(at), points(yMm + baselineMm), { lineBreak: false, baseline: 'alphabetic' });
      at += widthMm;
    }
  }
}

function drawCode(painter: Painter, code: PlacedCode, xMm: number, yMm: number): void {
  for (const { x, y, squares } of darkRuns(code.matrix)) {
    painter.rect(
      points(xMm + code.xMm + x * code.squareMm),
      points(yMm + code.yMm + y * code.squareMm),
      points(squares * code.squareMm),
      points(code.squareMm),
    );
  }
  painter.fill('black');
}

const points = (mm: number) => mm * POINTS_PER_MM;
