/// <reference path="./pdfkit.d.ts" />
import { PDFDocument } from "pdfkit";
import type { MeasureText } from "../sheets/sheet.ts";

/** The pack's own font, as the bytes of TrueType or OpenType files. */
export interface PackFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** Gives the document its two fonts, by the names `regular` and `bold`. */
export function registerFonts(document: PDFDocument, fonts: PackFonts): void {
  document.registerFont("regular", fonts.regular);
  document.registerFont("bold", fonts.bold);
}

/**
 * Measures texts as they will be set in the PDF.
 *
 * Throws what the font reader throws when the bytes are no font.
 *
 * ### Example
 *   const { readFileSync } = await import("node:fs");
 *   const file = "node_modules/@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf";
 *   const font = new Uint8Array(readFileSync(file));
 *   const widthOf = pdfTextMeasure({ regular: font, bold: font });
 *   expect(widthOf("100 mm", 4, false)).toBeGreaterThan(widthOf("mm", 4, false));
 */
export function pdfTextMeasure(fonts: PackFonts): MeasureText {
  const document = new PDFDocument({ autoFirstPage: false, font: null });
  registerFonts(document, fonts);
  return (text, size, bold) =>
    document
      .font(bold ? "bold" : "regular")
      .fontSize(size)
      .widthOfString(text);
}
