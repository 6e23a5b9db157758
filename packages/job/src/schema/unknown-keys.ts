import { pathInWords } from "../fault.ts";

type Keyed = Record<string, unknown>;

function isKeyed(value: unknown): value is Keyed {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/**
 * Paths of the keys that the schema does not know: those in the document that are absent from what the
 * schema returned, since a schema returns only what it knows. In document order.
 */
export function unknownKeys(document: unknown, known: unknown): string[] {
  const found: string[] = [];
  const walk = (given: unknown, kept: unknown, path: (string | number)[]): void => {
    if (Array.isArray(given) && Array.isArray(kept)) {
      given.forEach((item, index) => {
        walk(item, kept[index], [...path, index]);
      });
    } else if (isKeyed(given) && isKeyed(kept)) {
      for (const [key, value] of Object.entries(given)) {
        if (Object.hasOwn(kept, key)) walk(value, kept[key], [...path, key]);
        else found.push(pathInWords([...path, key]));
      }
    }
  };
  walk(document, known, []);
  return found;
}
