/** One thing wrong with a job file: where, what was found, what was expected. */
export interface Fault {
  /** Path in the file, such as `leaves[0].lengthMm`; empty for the file as a whole. */
  readonly path: string;
  readonly found: string;
  readonly expected: string;
}

/** Keys and positions that lead to a value in a document. */
export type DocumentPath = readonly (string | number)[];

/**
 * A path as people read it: `leaves[0].fixed[1].outlineMm`. Keys that are no plain names are quoted.
 *
 * ### Example
 *   expect(pathInWords(["leaves", 0, "lengthMm"])).toBe("leaves[0].lengthMm");
 *   expect(pathInWords(["rams", 1, "two words"])).toBe('rams[1]["two words"]');
 */
export function pathInWords(path: DocumentPath): string {
  return path.reduce<string>(pathBelow, "");
}

const plainName = /^[A-Za-z_$][\w$]*$/;

/** The path in words of a key below a path in words: a walk over a document adds key by key. */
export function pathBelow(path: string, key: string | number): string {
  if (typeof key === "number") return `${path}[${key}]`;
  if (!plainName.test(key)) return `${path}[${JSON.stringify(key)}]`;
  return path === "" ? key : `${path}.${key}`;
}

const longestShown = 48;

/** A value as it is named in a fault: short values as written, long ones by what they are. */
export function foundInWords(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  switch (typeof value) {
    case "number":
      return Number.isFinite(value) ? String(value) : "a number too large to hold";
    case "boolean":
      return String(value);
    case "string": {
      const shown = value.length > longestShown ? `${value.slice(0, longestShown)}…` : value;
      return `the text ${JSON.stringify(shown)}`;
    }
    default:
      return Array.isArray(value) ? listInWords(value) : "an object";
  }
}

function listInWords(list: readonly unknown[]): string {
  if (list.length === 0) return "an empty list";
  const plain =
    list.length <= 4 && list.every((item) => typeof item === "number" || typeof item === "boolean");
  return plain ? `[${list.map(String).join(", ")}]` : `a list of ${list.length}`;
}

/**
 * One fault in one line: path, found, expected.
 *
 * ### Example
 *   const fault = { path: "leaves[0].lengthMm", found: "-3", expected: "a number above 0" };
 *   expect(faultInWords(fault)).toBe("leaves[0].lengthMm: found -3, expected a number above 0");
 */
export function faultInWords(fault: Fault): string {
  const where = fault.path === "" ? "" : `${fault.path}: `;
  return `${where}found ${fault.found}, expected ${fault.expected}`;
}

/**
 * Faults as lines for people: at most `most` of them, then how many more there are.
 *
 * ### Example
 *   const fault = { path: "title", found: "3", expected: "text" };
 *   expect(faultLines([fault, fault, fault], 2).at(-1)).toBe("and 1 more fault");
 */
export function faultLines(faults: readonly Fault[], most = 50): string[] {
  const lines = faults.slice(0, most).map(faultInWords);
  const more = faults.length - lines.length;
  if (more > 0) lines.push(`and ${more} more fault${more === 1 ? "" : "s"}`);
  return lines;
}
