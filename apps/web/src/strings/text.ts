import { english, type Phrase } from "./english.ts";

/** A catalogue in another language has the same keys; what it lacks is said in English. */
export type Catalogue = Readonly<Partial<Record<Phrase, string>>>;

const catalogues: Readonly<Record<string, Catalogue>> = { en: english };

const language = typeof navigator === "undefined" ? "en" : (navigator.language.split("-")[0] ?? "en");
const chosen: Catalogue = catalogues[language] ?? english;

/**
 * A text of the workbench in the reader's language, with `{name}` filled in.
 *
 * ### Example
 *   expect(text("block.scale", { scale: 12 })).toBe("scale 1 : 12");
 */
export function text(phrase: Phrase, values: Readonly<Record<string, string | number>> = {}): string {
  const pattern = chosen[phrase] ?? english[phrase];
  return pattern.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));
}

export type { Phrase };
