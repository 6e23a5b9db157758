import { pathBelow } from "../fault.ts";

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
  const walk = (given: unknown, kept: unknown, path: string): void => {
    if (Array.isArray(given) && Array.isArray(kept)) {
      given.forEach((item, index) => {
        walk(item, kept[index], pathBelow(path, index));
      });
    } else if (isKeyed(given) && isKeyed(kept)) {
      for (const [key, value] of Object.entries(given)) {
        // Most values are numbers and texts: nothing lies below them, and they need no path.
        if (!Object.hasOwn(kept, key)) found.push(pathBelow(path, key));
        else if (typeof value === "object") walk(value, kept[key], pathBelow(path, key));
      }
    }
  };
  walk(document, known, "");
  return found;
}
