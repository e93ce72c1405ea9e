// Writes the characters of PDF files with their places, as pdfium reads them, the library with which Chromium shows PDF.
// Chromium itself gives no text of a PDF without a window, and its pictures show no place of a word.
// Usage: node pdfium-text.mjs FOLDER-OF-THE-MODULE LAST-PAGE FILE OUTPUT [FILE OUTPUT …]
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [module, last, ...files] = process.argv.slice(2);
const { init } = await import(pathToFileURL(`${module}/dist/index.js`));
const pdfium = await init({ wasmBinary: readFileSync(`${module}/dist/pdfium.wasm`) });
pdfium.PDFiumExt_Init();
const memory = pdfium.pdfium;
const place = memory.wasmExports.malloc(16);

for (let at = 0; at < files.length; at += 2) {
  const bytes = readFileSync(files[at]);
  const start = memory.wasmExports.malloc(bytes.length);
  memory.HEAPU8.set(bytes, start);
  const document = pdfium.FPDF_LoadMemDocument(start, bytes.length, "");
  const lines = [];
  for (let number = 0; document && number < Math.min(last, pdfium.FPDF_GetPageCount(document)); number++) {
    // Stamps are annotations; as a part of the page, they have text.
    const before = pdfium.FPDF_LoadPage(document, number);
    pdfium.FPDFPage_Flatten(before, 0);
    pdfium.FPDF_ClosePage(before);
    const page = pdfium.FPDF_LoadPage(document, number);
    const height = pdfium.FPDF_GetPageHeightF(page);
    const text = pdfium.FPDFText_LoadPage(page);
    lines.push("<page>");
    for (let i = 0; i < pdfium.FPDFText_CountChars(text); i++) {
      pdfium.FPDFText_GetCharOrigin(text, i, place, place + 8);
      const x = memory.HEAPF64[place / 8];
      const y = height - memory.HEAPF64[place / 8 + 1];
      lines.push(`<char x="${x.toFixed(2)}" y="${y.toFixed(2)}" c="&#${pdfium.FPDFText_GetUnicode(text, i)};"/>`);
    }
    pdfium.FPDFText_ClosePage(text);
    pdfium.FPDF_ClosePage(page);
  }
  if (document) pdfium.FPDF_CloseDocument(document);
  memory.wasmExports.free(start);
  writeFileSync(files[at + 1], lines.join("\n"));
}
