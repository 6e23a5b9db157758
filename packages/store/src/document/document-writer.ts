import type * as Y from "yjs";
import { alignLists } from "./align-lists.ts";
import { type Entry, entryAt, entryKind, positionOf, type Scalar } from "./entry.ts";
import { type JobTree, jsonOf, listItems, objectKeys, type Place } from "./job-tree.ts";
import { positionsInOrder } from "./list-positions.ts";
import { itemSegment, keySegment } from "./path.ts";

/** Numbers in a list this short are coordinates or the two ends of a range: each is followed by its place. */
const longestTuple = 4;

/**
 * Writes JSON into the document by the smallest difference: an entry that holds the wanted value already is
 * left alone, so that what another person edits elsewhere in the same object or list survives the merge.
 */
export class DocumentWriter {
  readonly #entries: Y.Map<unknown>;
  readonly #tree: JobTree;
  readonly #newItemId: () => string;

  /** `newItemId` gives an id that no other replica gives, and a different one after each write. */
  constructor(entries: Y.Map<unknown>, tree: JobTree, newItemId: () => string) {
    this.#entries = entries;
    this.#tree = tree;
    this.#newItemId = newItemId;
  }

  /** Makes a place hold a JSON value; in a list, at the position `at`. */
  write(place: Place, value: unknown, at?: number): void {
    if (Array.isArray(value)) this.#writeList(place, value, at);
    else if (typeof value === "object" && value !== null) this.#writeObject(place, value, at);
    else {
      this.#put(place, entryAt(value as Scalar, at));
      this.#clearBelow(place);
    }
  }

  /** Removes a place and all below it. */
  remove(place: Place): void {
    this.#clearBelow(place);
    this.#put(place, undefined);
  }

  #writeObject(place: Place, value: object, at: number | undefined): void {
    const wanted = Object.keys(value).filter((key) => (value as Record<string, unknown>)[key] !== undefined);
    this.#becomeContainer(place, "object", { keys: wanted, ...(at === undefined ? {} : { at }) }, at);
    const kept = new Set(wanted.map(keySegment));
    for (const child of [...place.below.values()]) if (!kept.has(child.segment)) this.remove(child);
    for (const key of wanted) {
      this.write(this.#tree.below(place, keySegment(key)), (value as Record<string, unknown>)[key]);
    }
    const shown = objectKeys(place);
    if (shown.some((key, index) => key !== wanted[index])) {
      this.#put(place, entryAt({ keys: wanted }, at));
    }
  }

  #writeList(place: Place, value: readonly unknown[], at: number | undefined): void {
    const isNew = place.entry === undefined || entryKind(place.entry) !== "list";
    this.#becomeContainer(place, "list", { list: true, ...(at === undefined ? {} : { at }) }, at);
    const items = listItems(place);
    const aligned = alignLists(items.map(jsonOf), value);
    const old = aligned.map((from) => (from === null ? null : positionOf(items[from]?.entry as Entry)));
    const positions = positionsInOrder(old);
    const kept = new Set(aligned);
    for (const [index, item] of items.entries()) if (!kept.has(index)) this.remove(item);
    const isTuple = isNew && value.length <= longestTuple && value.every((one) => typeof one === "number");
    for (const [index, one] of value.entries()) {
      const from = aligned[index];
      const item =
        typeof from === "number"
          ? (items[from] as Place)
          : this.#tree.below(place, itemSegment(isTuple ? String(index) : this.#newItemId()));
      this.write(item, one, positions[index] as number);
    }
  }

  /** A place that held something else, or nothing, starts empty: leftovers of a removed value must not come back. */
  #becomeContainer(place: Place, kind: "object" | "list", fresh: Entry, at: number | undefined): void {
    if (place.entry === undefined || entryKind(place.entry) !== kind) {
      this.#put(place, fresh);
      this.#clearBelow(place);
    } else this.#put(place, entryAt(place.entry, at));
  }

  #clearBelow(place: Place): void {
    for (const child of [...place.below.values()]) this.remove(child);
  }

  #put(place: Place, entry: Entry | undefined): void {
    const before = place.entry;
    this.#tree.put(place, entry);
    if (place.entry === before) return;
    if (entry === undefined) this.#entries.delete(place.key);
    else this.#entries.set(place.key, entry);
  }
}
