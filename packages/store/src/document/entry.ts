/** A JSON value that holds no others. */
export type Scalar = string | number | boolean | null;

/**
 * What the document keeps under one key. A scalar of an object stands bare. An object keeps the order of its
 * keys, so that an exported file shows them as they were written; keys that are not listed come after, sorted.
 * An item of a list keeps its position `at`, a number; equal positions are ordered by the item's id.
 */
export type Entry =
  | Scalar
  | { readonly keys: readonly string[]; readonly at?: number }
  | { readonly list: true; readonly at?: number }
  | { readonly value: Scalar; readonly at: number };

export type EntryKind = "object" | "list" | "scalar";

function isScalar(value: unknown): value is Scalar {
  return value === null || ["string", "number", "boolean"].includes(typeof value);
}

export function entryKind(entry: Entry): EntryKind {
  if (isScalar(entry) || "value" in entry) return "scalar";
  return "keys" in entry ? "object" : "list";
}

export function scalarOf(entry: Entry): Scalar {
  if (isScalar(entry)) return entry;
  if ("value" in entry) return entry.value;
  throw new TypeError("scalarOf found an object or a list; it expects a scalar");
}

export function positionOf(entry: Entry): number {
  return isScalar(entry) ? 0 : (entry.at ?? 0);
}

/** The same content at a position in a list (or, for `undefined`, in an object). */
export function entryAt(entry: Entry, at: number | undefined): Entry {
  if (entryKind(entry) === "scalar") {
    const value = scalarOf(entry);
    return at === undefined ? value : { value, at };
  }
  const { at: _before, ...content } = entry as Exclude<Entry, Scalar | { value: Scalar }>;
  return (at === undefined ? content : { ...content, at }) as Entry;
}

/** What came from outside, as an entry; undefined for anything that is none. */
export function readEntry(raw: unknown): Entry | undefined {
  if (isScalar(raw)) return typeof raw === "number" && !Number.isFinite(raw) ? undefined : raw;
  if (typeof raw !== "object" || raw === null) return undefined;
  const { keys, list, value, at } = raw as Record<string, unknown>;
  const position = typeof at === "number" && Number.isFinite(at) ? { at } : {};
  if (Array.isArray(keys)) return { keys: keys.filter((key) => typeof key === "string"), ...position };
  if (list === true) return { list, ...position };
  const scalar = value === undefined ? undefined : readEntry(value);
  return isScalar(scalar) ? { value: scalar, at: position.at ?? 0 } : undefined;
}

export function sameEntry(a: Entry | undefined, b: Entry | undefined): boolean {
  if (a === undefined || b === undefined || isScalar(a) || isScalar(b)) return Object.is(a, b);
  if (a.at !== b.at || entryKind(a) !== entryKind(b)) return false;
  if ("keys" in a && "keys" in b) {
    return a.keys.length === b.keys.length && a.keys.every((key, index) => key === b.keys[index]);
  }
  return "value" in a && "value" in b ? Object.is(a.value, b.value) : true;
}
