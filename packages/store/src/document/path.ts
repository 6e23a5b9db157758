/** Keys and positions that lead from the job to a value in it: `["leaves", 0, "lengthMm"]`. */
export type Path = readonly (string | number)[];

/** One step of a key: `.name` leads into an object, `@id` to an item of a list. */
export type Segment = string;

/** The step to a key of an object. Escaped as in a JSON Pointer, so that any key may be held. */
export function keySegment(key: string): Segment {
  return `.${key.replaceAll("~", "~0").replaceAll("/", "~1")}`;
}

/** The step to an item of a list. Items go by an id of their own: positions shift under concurrent edits. */
export function itemSegment(id: string): Segment {
  return `@${id}`;
}

/** The key of an object that a segment leads to; null when it leads to an item of a list. */
export function keyOfSegment(segment: Segment): string | null {
  return segment.startsWith(".") ? segment.slice(1).replaceAll("~1", "/").replaceAll("~0", "~") : null;
}

/** Deeper keys are not read: a job needs about eight levels, and walking must never overflow the stack. */
const deepest = 128;

/** Segments of a stored key, or null for one that this code would not have written. */
export function segmentsOf(key: string): Segment[] | null {
  if (key === "") return [];
  const segments = key.split("/");
  const readable = segments.length <= deepest && segments.every((one) => /^[.@]/.test(one));
  return readable ? segments : null;
}
