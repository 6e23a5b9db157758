import { type DocumentPath, type Fault, foundInWords, pathInWords } from "../fault.ts";
import { valueAt } from "../schema/schema-faults.ts";

/**
 * A place in a document that may be malformed. Checks that tie values together read through it, so that
 * they can report next to the faults of single values: what has the wrong type counts as absent.
 */
export interface DocumentPart {
  readonly path: DocumentPath;
  number(...path: DocumentPath): number | null;
  text(...path: DocumentPath): string | null;
  list(...path: DocumentPath): DocumentPart[];
  has(...path: DocumentPath): boolean;
  fault(path: DocumentPath, expected: string, found?: string): Fault;
}

/** The part of `document` at `path`. */
export function documentPart(document: unknown, path: DocumentPath = []): DocumentPart {
  const read = (below: DocumentPath) => valueAt(document, [...path, ...below]);
  return {
    path,
    number: (...below) => {
      const value = read(below);
      return typeof value === "number" && Number.isFinite(value) ? value : null;
    },
    text: (...below) => {
      const value = read(below);
      return typeof value === "string" ? value : null;
    },
    list: (...below) => {
      const value = read(below);
      return Array.isArray(value) ? value.map((_, index) => documentPart(document, [...path, ...below, index])) : [];
    },
    has: (...below) => read(below) !== undefined,
    fault: (below, expected, found) => ({
      path: pathInWords([...path, ...below]),
      found: found ?? foundInWords(read(below)),
      expected,
    }),
  };
}
