import { PDFiumLibrary } from '@hyzyla/pdfium';

/** A page as dots: grey values 0 (black) to 255 (white), row by row. */
export interface PrintedPage {
  width: number;
  height: number;
  grey: Uint8Array;
  /** the page's text, as a reader would copy it */
  text: string;
}

/** What a printer of so many dots an inch would make of a PDF. */
export async function renderPdf(pdf: Uint8Array, dotsPerInch: number): Promise<PrintedPage[]> {
  const library = await PDFiumLibrary.init();
  try {
    const document = await library.loadDocument(pdf);
    const pages: PrintedPage[] = [];
    for (const page of document.pages()) {
      const text = page.getText();
      const image = await page.render({ scale: dotsPerInch / 72, render: 'bitmap', colorSpace: 'Gray' });
      pages.push({ width: image.width, height: image.height, grey: image.data, text });
    }
    document.destroy();
    return pages;
  } finally {
    library.destroy();
  }
}
