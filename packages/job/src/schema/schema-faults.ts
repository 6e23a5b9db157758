import type * as z from "zod";
import { type DocumentPath, type Fault, foundInWords, pathInWords } from "../fault.ts";

/**
 * The faults of a document against a schema, one for each path, in the order of the schema.
 *
 * The schema's error messages are written as what was expected; what was found is read from the document.
 */
export function schemaFaults(document: unknown, error: z.ZodError): Fault[] {
  const faults = new Map<string, Fault>();
  for (const issue of error.issues) {
    const path = issue.path.map((key) => (typeof key === "symbol" ? String(key) : key));
    const where = pathInWords(path);
    const found =
      issue.code === "custom" && typeof issue.params?.found === "string" ? issue.params.found : null;
    // Several bounds of one value can fail together; their messages say the same.
    if (!faults.has(where)) {
      faults.set(where, {
        path: where,
        found: found ?? foundInWords(valueAt(document, path)),
        expected: issue.message,
      });
    }
  }
  return [...faults.values()];
}

/** The value at a path, undefined when there is none. Inherited properties do not count. */
export function valueAt(document: unknown, path: DocumentPath): unknown {
  let value: unknown = document;
  for (const key of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<string | number, unknown>)[key];
  }
  return value;
}
