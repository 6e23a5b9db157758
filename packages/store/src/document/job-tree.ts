import { type Entry, entryKind, positionOf, readEntry, sameEntry, scalarOf } from "./entry.ts";
import { keyOfSegment, keySegment, type Path, type Segment, segmentsOf } from "./path.ts";

/** A place in the document. It may be empty: a value below a place that was removed meanwhile is not shown. */
export interface Place {
  readonly key: string;
  readonly segment: Segment;
  readonly above: Place | null;
  readonly below: Map<Segment, Place>;
  entry: Entry | undefined;
  /** JSON of this place and all below, kept until something in it changes; undefined when it must be made anew. */
  json: unknown;
}

/**
 * The flat entries of the document as a tree, and as JSON made once: what did not change keeps its identity.
 */
export class JobTree {
  readonly root: Place = emptyPlace("", "", null);

  /** Takes an entry over as it was stored; undefined for one that was deleted. */
  takeStored(key: string, raw: unknown): void {
    const segments = segmentsOf(key);
    if (segments === null) return;
    const entry = raw === undefined ? undefined : readEntry(raw);
    const place = entry === undefined ? this.#find(segments) : this.#make(segments);
    if (place !== undefined) this.put(place, entry);
  }

  put(place: Place, entry: Entry | undefined): void {
    if (sameEntry(place.entry, entry)) return;
    place.entry = entry;
    for (let each: Place | null = place; each !== null; each = each.above) each.json = undefined;
    if (entry === undefined) dropEmpty(place);
  }

  below(place: Place, segment: Segment): Place {
    const there = place.below.get(segment);
    if (there !== undefined) return there;
    const key = place.key === "" ? segment : `${place.key}/${segment}`;
    const made = emptyPlace(key, segment, place);
    place.below.set(segment, made);
    return made;
  }

  /** The place that a path of keys and positions leads to; undefined when there is nothing. */
  at(path: Path): Place | undefined {
    let place: Place | undefined = this.root;
    for (const step of path) {
      if (place === undefined) return undefined;
      place = typeof step === "number" ? listItems(place)[step] : keyedPlace(place, step);
    }
    return place?.entry === undefined ? undefined : place;
  }

  #find(segments: readonly Segment[]): Place | undefined {
    let place: Place | undefined = this.root;
    for (const segment of segments) place = place?.below.get(segment);
    return place;
  }

  #make(segments: readonly Segment[]): Place {
    return segments.reduce((place, segment) => this.below(place, segment), this.root);
  }
}

function emptyPlace(key: string, segment: Segment, above: Place | null): Place {
  return { key, segment, above, below: new Map(), entry: undefined, json: undefined };
}

function dropEmpty(place: Place): void {
  let each = place;
  while (each.above !== null && each.entry === undefined && each.below.size === 0) {
    each.above.below.delete(each.segment);
    each = each.above;
  }
}

function keyedPlace(place: Place, key: string): Place | undefined {
  if (place.entry === undefined || entryKind(place.entry) !== "object") return undefined;
  return place.below.get(keySegment(key));
}

/** Items of a list in their order; none when the place holds no list. */
export function listItems(place: Place): Place[] {
  if (place.entry === undefined || entryKind(place.entry) !== "list") return [];
  const items = [...place.below.values()].filter(
    ({ entry, segment }) => entry !== undefined && segment.startsWith("@"),
  );
  return items.sort(
    (a, b) => positionOf(a.entry as Entry) - positionOf(b.entry as Entry) || (a.segment < b.segment ? -1 : 1),
  );
}

/** Keys of an object in the order that its file shows them; none when the place holds no object. */
export function objectKeys(place: Place): string[] {
  const entry = place.entry;
  if (typeof entry !== "object" || entry === null || !("keys" in entry)) return [];
  const waiting = new Set<string>();
  for (const { segment, entry: held } of place.below.values()) {
    const key = held === undefined ? null : keyOfSegment(segment);
    if (key !== null) waiting.add(key);
  }
  const listed = entry.keys.filter((key) => waiting.delete(key));
  return [...listed, ...[...waiting].sort()];
}

/** The value at a place as JSON; frozen, since it is handed out again while nothing in it changes. */
export function jsonOf(place: Place): unknown {
  if (place.entry === undefined) return undefined;
  place.json ??= madeJson(place, place.entry);
  return place.json;
}

function madeJson(place: Place, entry: Entry): unknown {
  switch (entryKind(entry)) {
    case "scalar":
      return scalarOf(entry);
    case "list":
      return Object.freeze(listItems(place).map(jsonOf));
    case "object": {
      const made: Record<string, unknown> = {};
      for (const key of objectKeys(place)) {
        const value = jsonOf(place.below.get(keySegment(key)) as Place);
        // Not assigned: a key named "__proto__" would set the prototype instead of being held.
        Object.defineProperty(made, key, { value, enumerable: true });
      }
      return Object.freeze(made);
    }
  }
}
