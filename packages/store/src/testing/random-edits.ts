import fc from "fast-check";
import type { Path } from "../document/path.ts";
import type { LiveJob } from "../live-job.ts";

/** One edit before it meets a document: `spot` picks a place in whatever the document then holds. */
export interface RandomEdit {
  readonly kind: "set" | "setKey" | "insert" | "remove" | "undo" | "redo" | "replaceFrom";
  readonly spot: number;
  readonly key: string;
  readonly value: unknown;
}

const key = fc.oneof(
  fc.constantFrom("lengthMm", "need", "fixed", "id", "name", "a/b", "~", "@x", "__proto__", ""),
  fc.string({ maxLength: 4 }),
);

/** JSON as it occurs in jobs: numbers, short lists of numbers, things with names, and anything else. */
export const jsonValue: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: -9, max: 9 }) },
  { weight: 2, arbitrary: fc.array(fc.integer({ min: 0, max: 5 }), { maxLength: 5 }) },
  {
    weight: 2,
    arbitrary: fc.array(fc.record({ id: fc.constantFrom("a", "b", "c"), w: fc.nat(3) }), { maxLength: 4 }),
  },
  { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 3 }) },
);

export const jsonObject = fc.dictionary(key, jsonValue, { maxKeys: 5 });

export const randomEdit: fc.Arbitrary<RandomEdit> = fc.record({
  kind: fc.constantFrom(
    "set",
    "set",
    "setKey",
    "setKey",
    "insert",
    "insert",
    "remove",
    "undo",
    "redo",
    "replaceFrom",
  ),
  spot: fc.nat(),
  key,
  value: jsonValue,
});

/** Every path in a JSON value, the empty one first. */
export function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const entries: [string | number, unknown][] = Array.isArray(value)
    ? [...value.entries()]
    : Object.entries(value);
  return [path, ...entries.flatMap(([step, held]) => pathsOf(held, [...path, step]))];
}

export function valueAt(value: unknown, path: Path): unknown {
  return path.reduce((part, step) => (part as Record<string | number, unknown>)[step], value);
}

/** Makes the edit; the root stays an object. Answers whether the document took it. */
export function makeEdit(live: LiveJob, { kind, spot, key: name, value }: RandomEdit): boolean {
  const document = live.getJob();
  const pick = (wanted: (path: Path) => boolean): Path | undefined => {
    const paths = pathsOf(document).filter(wanted);
    return paths[spot % Math.max(1, paths.length)];
  };
  const label = `${kind} ${spot}`;
  const isObject = (path: Path) => {
    const held = valueAt(document, path);
    return typeof held === "object" && held !== null && !Array.isArray(held);
  };
  switch (kind) {
    case "undo":
      return live.undo();
    case "redo":
      return live.redo();
    case "replaceFrom": {
      const changed = { ...(document as object), [name]: value };
      return live.setValue([], changed, label).ok;
    }
    case "insert": {
      const list = pick((path) => Array.isArray(valueAt(document, path)));
      if (list === undefined) return false;
      const length = (valueAt(document, list) as unknown[]).length;
      return live.insert([...list, spot % (length + 1)], value, label).ok;
    }
    case "setKey": {
      const object = pick(isObject);
      return object !== undefined && live.setValue([...object, name], value, label).ok;
    }
    default: {
      const path = pick((each) => each.length > 0);
      if (path === undefined) return false;
      return kind === "set" ? live.setValue(path, value, label).ok : live.remove(path, label).ok;
    }
  }
}
