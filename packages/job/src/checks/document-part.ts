import { type DocumentPath, type Fault, foundInWords, pathInWords } from "../fault.ts";
import { valueAt } from "../schema/schema-faults.ts";

/**
 * A place in a document that may be malformed. Checks that tie values together read through it, so that
 * they can report next to the faults of single values: what has the wrong type, or is named in a fault
 * already, counts as absent, so that one slip does not raise a second, misleading fault.
 */
export interface DocumentPart {
  readonly path: DocumentPath;
  number(...path: DocumentPath): number | null;
  text(...path: DocumentPath): string | null;
  list(...path: DocumentPath): DocumentPart[];
  has(...path: DocumentPath): boolean;
  fault(path: DocumentPath, expected: string, found?: string): Fault;
}

/** The part of `document` at `path`; `faulty` holds the paths in words that have a fault already. */
export function documentPart(
  document: unknown,
  faulty: ReadonlySet<string>,
  path: DocumentPath = [],
): DocumentPart {
  const read = (below: DocumentPath) => valueAt(document, [...path, ...below]);
  const isFaulty = (below: DocumentPath) => faulty.has(pathInWords([...path, ...below]));
  return {
    path,
    number: (...below) => {
      const value = read(below);
      return typeof value === "number" && Number.isFinite(value) && !isFaulty(below) ? value : null;
    },
    text: (...below) => {
      const value = read(below);
      return typeof value === "string" && !isFaulty(below) ? value : null;
    },
    list: (...below) => {
      const value = read(below);
      if (!Array.isArray(value)) return [];
      return value.map((_, index) => documentPart(document, faulty, [...path, ...below, index]));
    },
    has: (...below) => read(below) !== undefined,
    fault: (below, expected, found) => ({
      path: pathInWords([...path, ...below]),
      found: found ?? foundInWords(read(below)),
      expected,
    }),
  };
}
