import { runTool } from "./run-tool.ts";

/** A word as poppler finds it on a page, in millimetres from the upper left corner. */
export interface PageWord {
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface PageWords {
  readonly width: number;
  readonly height: number;
  readonly words: readonly PageWord[];
}

const mm = (points: string | undefined): number => (Number(points) * 25.4) / 72;

/** Every word of every page with the box that poppler sees it in. */
export function pageWords(pdf: string): PageWords[] {
  const xml = runTool("pdftotext", ["-bbox", pdf, "-"]).toString("utf8");
  return [...xml.matchAll(/<page width="([\d.]+)" height="([\d.]+)">([\s\S]*?)<\/page>/g)].map((page) => ({
    width: mm(page[1]),
    height: mm(page[2]),
    words: [
      ...(page[3] ?? "").matchAll(
        /<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">([\s\S]*?)<\/word>/g,
      ),
    ].map((word) => ({
      left: mm(word[1]),
      top: mm(word[2]),
      right: mm(word[3]),
      bottom: mm(word[4]),
      text: plainText(word[5] ?? ""),
    })),
  }));
}

/** The words of a PDF as one text, pages apart by form feeds. */
export function pdfText(pdf: string): string {
  return runTool("pdftotext", ["-layout", pdf, "-"]).toString("utf8");
}

function plainText(xml: string): string {
  const entities: Readonly<Record<string, string>> = { lt: "<", gt: ">", quot: '"', apos: "'", amp: "&" };
  return xml.replace(/&(lt|gt|quot|apos|amp|#39);/g, (_, name: string) => entities[name] ?? "'");
}
