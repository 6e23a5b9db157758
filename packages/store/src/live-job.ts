import { type Fault, type Job, judgeDocument, pathInWords, type ReadJob } from "@pintle/job";
import * as Y from "yjs";
import { DocumentWriter } from "./document/document-writer.ts";
import { entryKind } from "./document/entry.ts";
import { JobTree, jsonOf, listItems, type Place } from "./document/job-tree.ts";
import { jsonValue } from "./document/json-value.ts";
import { positionsInOrder } from "./document/list-positions.ts";
import { itemSegment, keySegment, type Path } from "./document/path.ts";
import { EditHistory, type UndoState } from "./edit-history.ts";
import { type PatchStep, patchedValue } from "./json-patch.ts";

/** Whether an edit was made. What it was meant for may have been removed meanwhile, in another tab or by another person. */
export type Edited = { readonly ok: true } | { readonly ok: false; readonly fault: Fault };

const done: Edited = { ok: true };

/**
 * One job as a live document: edited here, merged with edits made elsewhere, undone and redone.
 *
 * The document is one map of flat entries, a key for each value, and not maps within maps: when two people add
 * the same object or list apart (the first need of a leaf, the first reading), both additions are kept, where
 * of two nested maps one would be lost whole. `DocumentWriter` says how JSON lies in it.
 *
 * `getJob`, `getJudged` and `getUndoState` return the same object until something in it changes, and parts
 * that did not change keep their identity, so that faces can subscribe cheaply.
 */
export class LiveJob {
  readonly #doc: Y.Doc;
  readonly #entries: Y.Map<unknown>;
  readonly #tree = new JobTree();
  readonly #writer: DocumentWriter;
  readonly #history: EditHistory;
  readonly #listeners = new Set<() => void>();
  readonly #local = {};
  #isEditing = false;
  #judged: { readonly job: unknown; readonly read: ReadJob } | null = null;

  /** `replicaId` is a fresh random whole number from 1 to 2^32 - 1: no two replicas of a job may share one. */
  constructor(replicaId: number) {
    if (!Number.isInteger(replicaId) || replicaId < 1 || replicaId > 0xffffffff) {
      throw new RangeError(
        `LiveJob found the replica id ${replicaId}; it expects a whole number from 1 to 2^32 - 1`,
      );
    }
    this.#doc = new Y.Doc();
    this.#doc.clientID = replicaId;
    this.#entries = this.#doc.getMap("job");
    this.#entries.observe((event) => {
      for (const key of event.keysChanged) this.#tree.takeStored(key, this.#entries.get(key));
    });
    this.#writer = new DocumentWriter(this.#entries, this.#tree, () => this.#newItemId());
    // Before the listener below: whoever is told of an edit must find it in the history already.
    this.#history = new EditHistory(this.#entries, this.#local);
    this.#doc.on("afterTransaction", (transaction) => {
      if (transaction.changed.size > 0) this.#tell();
    });
  }

  /** The job as the document holds it, unjudged: a merge or a half-typed value can break it. Undefined while nothing was loaded. */
  getJob = (): Job | undefined => jsonOf(this.#tree.root) as Job | undefined;

  /** The same job as `readJob` judges it: with the keys that it does not know, or with every fault. */
  getJudged = (): ReadJob => {
    const job = this.getJob();
    if (this.#judged === null || this.#judged.job !== job) this.#judged = { job, read: judgeDocument(job) };
    return this.#judged.read;
  };

  getUndoState = (): UndoState => this.#history.state;

  /** Calls `listener` after each change of the job or of what can be undone; returns the end of it. */
  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /**
   * Makes the value at a path the given JSON value, by the smallest difference. Objects on the way that are
   * missing are made; a list must hold the item already (see `insert`).
   */
  setValue(path: Path, value: unknown, label: string): Edited {
    const held = jsonValue(value, "setValue");
    return this.#edit(label, () => {
      const place = this.#placeFor(path);
      if ("ok" in place) return place;
      this.#writer.write(place, held, atOf(place));
      return done;
    });
  }

  /** Puts a value into a list, before the item that the path's last step points at; the length appends. */
  insert(path: Path, value: unknown, label: string): Edited {
    const held = jsonValue(value, "insert");
    const index = path.at(-1) as number;
    if (!Number.isInteger(index)) throw new TypeError("insert found a path that ends in no position");
    return this.#edit(label, () => {
      const list = this.#tree.at(path.slice(0, -1));
      const items = list === undefined ? [] : listItems(list);
      if (
        list?.entry === undefined ||
        entryKind(list.entry) !== "list" ||
        !(index >= 0 && index <= items.length)
      ) {
        return absent(path);
      }
      const old: (number | null)[] = items.map(atOf).map((at) => at ?? 0);
      old.splice(index, 0, null);
      const positions = positionsInOrder(old);
      const places = items.toSpliced(index, 0, this.#tree.below(list, itemSegment(this.#newItemId())));
      for (const [order, place] of places.entries()) {
        const content = order === index ? held : jsonOf(place);
        if (order === index || atOf(place) !== positions[order])
          this.#writer.write(place, content, positions[order]);
      }
      return done;
    });
  }

  /** Removes a key of an object or an item of a list, with all below it. */
  remove(path: Path, label: string): Edited {
    if (path.length === 0)
      throw new RangeError("remove found an empty path; it expects one that leads into the job");
    return this.#edit(label, () => {
      const place = this.#tree.at(path);
      if (place === undefined) return absent(path);
      this.#writer.remove(place);
      return done;
    });
  }

  /** Makes the whole job the given one, by the smallest difference. */
  replaceJob(job: Job, label: string): Edited {
    return this.setValue([], job, label);
  }

  /** Applies a patch (RFC 6902), such as a remedy: the whole of it, or nothing. One step of undo. */
  applyPatch(steps: readonly PatchStep[], label: string): Edited {
    const patched = patchedValue(this.getJob(), steps);
    return patched.ok ? this.setValue([], patched.value, label) : patched;
  }

  /** Several edits as one step of undo and one update. The first that fails ends it; what was done before stays. */
  editTogether(label: string, edits: () => Edited): Edited {
    return this.#edit(label, edits);
  }

  /** From here to `endGesture` all edits are one step of undo: a drag, a run of key presses. */
  beginGesture(label: string): void {
    this.#history.beginGesture(label);
  }

  endGesture(): void {
    this.#history.endGesture();
  }

  /** Takes back what was done since `beginGesture`, leaving nothing to undo or redo. */
  abandonGesture(): void {
    this.#history.abandonGesture();
    this.#tell();
  }

  /** Takes back this person's last edit. False when there was none, or when nothing was left of it to take back. */
  undo(): boolean {
    return this.#stepped(this.#history.undo());
  }

  redo(): boolean {
    return this.#stepped(this.#history.redo());
  }

  /** Takes in what another replica or the storage knows: an update in any order, also twice. Not undone here. */
  applyUpdate(update: Uint8Array, origin: unknown = null): void {
    Y.applyUpdate(this.#doc, update, origin);
  }

  /** Everything that this document knows, or only what a replica with the given state lacks. */
  encodeState(since?: Uint8Array): Uint8Array {
    return Y.encodeStateAsUpdate(this.#doc, since);
  }

  /** What this document knows, in short: for another replica to tell what is lacking. */
  encodeStateVector(): Uint8Array {
    return Y.encodeStateVector(this.#doc);
  }

  /** Calls `listener` with each update as it is made or taken in, and the origin given to `applyUpdate`; returns the end of it. */
  onUpdate(listener: (update: Uint8Array, origin: unknown) => void): () => void {
    this.#doc.on("update", listener);
    return () => this.#doc.off("update", listener);
  }

  destroy(): void {
    this.#listeners.clear();
    this.#doc.destroy();
  }

  /** Fills a document that is empty. Not an edit: it cannot be undone. */
  fill(job: Job): void {
    const held = jsonValue(job, "fill");
    this.#doc.transact(() => this.#writer.write(this.#tree.root, held));
  }

  #edit(label: string, change: () => Edited): Edited {
    if (this.#isEditing) return change();
    this.#history.willEdit(label);
    this.#isEditing = true;
    try {
      return this.#doc.transact(change, this.#local);
    } finally {
      this.#isEditing = false;
    }
  }

  /** A step that others' edits have left without effect is dropped without a change to tell of. */
  #stepped(changed: boolean): boolean {
    if (!changed) this.#tell();
    return changed;
  }

  #placeFor(path: Path): Place | Edited {
    const above = this.#tree.at(path.slice(0, -1));
    const last = path.at(-1);
    if (last === undefined) return this.#tree.root;
    if (typeof last === "number") return this.#tree.at(path) ?? absent(path);
    if (above?.entry !== undefined) {
      return entryKind(above.entry) === "object" ? this.#tree.below(above, keySegment(last)) : absent(path);
    }
    const made = path.length === 1 ? absent(path) : this.#placeFor(path.slice(0, -1));
    if ("ok" in made) return made;
    this.#writer.write(made, {}, atOf(made));
    return this.#tree.below(made, keySegment(last));
  }

  /** Unique without randomness: no two operations of a replica share a clock. */
  #newItemId(): string {
    const clock = Y.getState(this.#doc.store, this.#doc.clientID);
    return `${this.#doc.clientID.toString(36)}.${clock.toString(36)}`;
  }

  #tell(): void {
    for (const listener of [...this.#listeners]) listener();
  }
}

function absent(path: Path): Edited {
  return {
    ok: false,
    fault: { path: pathInWords(path), found: "nothing", expected: "a value that is still in the job" },
  };
}

function atOf(place: Place): number | undefined {
  const entry = place.entry;
  return typeof entry === "object" && entry !== null ? entry.at : undefined;
}

/**
 * A live job from a job that was read. `replicaId`: see `LiveJob`.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const live = createLiveJob({ format: "pintle-job", version: 1, leaves: [leaf] }, 7);
 *   live.setValue(["leaves", 0, "openAngleDeg"], 95, "Opening angle");
 *   expect(live.getJob()?.leaves[0]?.openAngleDeg).toBe(95);
 *   expect(live.getUndoState()).toEqual({ undo: "Opening angle", redo: null });
 *   live.undo();
 *   expect(live.getJob()?.leaves[0]).toEqual(leaf);
 */
export function createLiveJob(job: Job, replicaId: number): LiveJob {
  const live = new LiveJob(replicaId);
  live.fill(job);
  return live;
}
