/// <reference path="./pdfkit.d.ts" />
import { PDFDocument } from "pdfkit";
import { withoutControls } from "../scene/one-line.ts";
import type { Sheet } from "../sheets/sheet.ts";
import { type PackFonts, registerFonts } from "./pdf-fonts.ts";
import { PdfPen } from "./pdf-pen.ts";

/** What a PDF says of itself. */
export interface PdfAbout {
  readonly title: string;
  readonly subject: string;
  /** Given, not taken from a clock: the same job and date make the same bytes. */
  readonly date: Date;
}

const pointsPerMm = 72 / 25.4;

/**
 * Sheets as one PDF: vector, own fonts embedded as subsets, texts tagged, and a request to the viewer to print
 * without scaling. One millimetre of a sheet is one millimetre of paper.
 *
 * Resolves to the same bytes for the same input on the same platform.
 *
 * ### Example
 *   const { readFileSync } = await import("node:fs");
 *   const file = "node_modules/@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf";
 *   const font = new Uint8Array(readFileSync(file));
 *   const about = { title: "Yard", subject: "One blank page", date: new Date(0) };
 *   const bytes = await pdfFile([], about, { regular: font, bold: font });
 *   expect(new TextDecoder().decode(bytes.slice(0, 5))).toBe("%PDF-");
 */
export async function pdfFile(
  sheets: readonly Sheet[],
  about: PdfAbout,
  fonts: PackFonts,
): Promise<Uint8Array> {
  const document = new PDFDocument({
    autoFirstPage: false,
    displayTitle: true,
    font: null,
    info: {
      Title: withoutControls(about.title),
      Subject: withoutControls(about.subject),
      Creator: "Pintle",
      CreationDate: about.date,
      ModDate: about.date,
    },
    lang: "en",
    pdfVersion: "1.7",
    tagged: true,
  });
  const bytes = collected(document);
  const preferences = document._root.data.ViewerPreferences;
  if (preferences === undefined) throw new Error("pdfFile found no viewer preferences in the document");
  preferences.data.PrintScaling = "None";
  registerFonts(document, fonts);
  for (const sheet of sheets) {
    document.addPage({ size: [sheet.width * pointsPerMm, sheet.height * pointsPerMm], margin: 0 });
    document.scale(pointsPerMm);
    const section = document.struct("Sect", { title: withoutControls(sheet.title) });
    document.addStructure(section);
    new PdfPen(document, section).draw(sheet.items);
    section.end();
  }
  document.end();
  return bytes;
}

function collected(document: PDFDocument): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    document.on("data", (chunk) => chunks.push(chunk));
    document.on("error", reject);
    document.on("end", () => {
      const whole = new Uint8Array(chunks.reduce((length, chunk) => length + chunk.length, 0));
      let offset = 0;
      for (const chunk of chunks) {
        whole.set(chunk, offset);
        offset += chunk.length;
      }
      resolve(whole);
    });
  });
}
