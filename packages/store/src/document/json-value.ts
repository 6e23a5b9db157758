const unpaired = /\p{Surrogate}/gu;

/**
 * A JSON value as the document can keep it: a copy without keys that hold `undefined`, half surrogate pairs
 * replaced by U+FFFD as UTF-8 has no place for them. Throws on what JSON cannot hold: a caller's mistake.
 */
export function jsonValue(value: unknown, what: string): unknown {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new RangeError(`${what} found ${value}; it expects finite numbers`);
    return value;
  }
  if (typeof value === "string") return value.replace(unpaired, "\uFFFD");
  if (value === null || typeof value === "boolean") return value;
  if (Array.isArray(value)) return value.map((item) => jsonValue(item, what));
  if (typeof value === "object") {
    const held = Object.entries(value).filter(([, one]) => one !== undefined);
    return Object.fromEntries(held.map(([key, one]) => [jsonValue(key, what), jsonValue(one, what)]));
  }
  throw new TypeError(`${what} found a ${typeof value}; it expects JSON values`);
}
