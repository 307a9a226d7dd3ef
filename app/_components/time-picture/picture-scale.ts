/** Room inside a drawing, in its own units. */
export interface PictureBox {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Where things stand in a drawing. */
export interface PictureScale extends PictureBox {
  /** the line on which the picture stands */
  floor: number;
  x: (time: number) => number;
  y: (figure: number) => number;
}

interface Axes {
  /** first and last moment, hours or days */
  times: readonly [from: number, to: number];
  figures: readonly [lowest: number, highest: number];
}

/** Lays two axes into a box: times to the right, figures upwards. */
export function pictureScale(box: PictureBox, { times: [from, to], figures: [lowest, highest] }: Axes): PictureScale {
  const { width, height, left, right, top, bottom } = box;
  return {
    ...box,
    floor: height - bottom,
    x: (time) => left + ((time - from) / (to - from || 1)) * (width - left - right),
    y: (figure) => height - bottom - ((figure - lowest) / (highest - lowest)) * (height - top - bottom),
  };
}
