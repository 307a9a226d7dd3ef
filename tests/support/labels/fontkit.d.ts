/** The part of fontkit, which sets text for react-pdf, that a test asks for the width of a line. It has no types. */
declare module 'fontkit' {
  interface Font {
    unitsPerEm: number;
    layout(text: string): { advanceWidth: number };
  }
  export function openSync(file: string): Font;
}
