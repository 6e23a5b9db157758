import type { Job } from "@pintle/job";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Path } from "./document/path.ts";
import { compactUpdates } from "./kept-job.ts";
import { createLiveJob, LiveJob } from "./live-job.ts";
import { jsonObject, jsonValue, makeEdit, pathsOf, randomEdit, valueAt } from "./testing/random-edits.ts";
import { unhurried } from "./testing/unhurried.ts";

const seed = 20_417;
/** The document keeps any JSON object; the checks do not need a whole job. */
const liveOf = (value: unknown, replicaId = 1) => createLiveJob(value as Job, replicaId);
const text = (live: LiveJob) => JSON.stringify(live.getJob());
const copyOf = (live: LiveJob, replicaId: number) => {
  const copy = new LiveJob(replicaId);
  copy.applyUpdate(live.encodeState());
  return copy;
};

describe("one document", () => {
  test(
    "holds any JSON object, key order included, and hands it to a copy",
    () => {
      fc.assert(
        fc.property(jsonObject, (value) => {
          const live = liveOf(value);
          expect(live.getJob()).toEqual(value);
          expect(text(live)).toBe(JSON.stringify(value));
          expect(text(copyOf(live, 2))).toBe(JSON.stringify(value));
        }),
        { seed, numRuns: 200 },
      );
    },
    unhurried,
  );

  test(
    "set to another value it holds that, key order included, whatever it held before",
    () => {
      fc.assert(
        fc.property(jsonObject, jsonObject, (before, after) => {
          const live = liveOf(before);
          live.setValue([], after, "all");
          expect(live.getJob()).toEqual(after);
          expect(text(live)).toBe(JSON.stringify(after));
          expect(text(copyOf(live, 2))).toBe(JSON.stringify(after));
          live.undo();
          expect(text(live)).toBe(JSON.stringify(before));
        }),
        { seed, numRuns: 200 },
      );
    },
    unhurried,
  );

  test(
    "set, insert and remove do what they do to plain JSON",
    () => {
      fc.assert(
        fc.property(
          jsonObject,
          jsonValue,
          fc.nat(),
          fc.constantFrom("set", "insert", "remove"),
          (start, value, spot, kind) => {
            const live = liveOf(start);
            const model = structuredClone(start);
            const paths = pathsOf(start).filter((path) => path.length > 0);
            const path = paths[spot % Math.max(1, paths.length)];
            if (path === undefined) return;
            const above = valueAt(model, path.slice(0, -1)) as Record<string | number, unknown>;
            const last = path.at(-1) as string | number;
            if (kind === "insert") {
              if (!Array.isArray(above)) return;
              live.insert(path, value, "x");
              above.splice(last as number, 0, value);
            } else if (kind === "remove") {
              live.remove(path, "x");
              if (Array.isArray(above)) above.splice(last as number, 1);
              else delete above[last];
            } else {
              live.setValue(path, value, "x");
              above[last] = value;
            }
            expect(live.getJob()).toEqual(model);
          },
        ),
        { seed, numRuns: 400 },
      );
    },
    unhurried,
  );

  test(
    "what an edit does not touch keeps its identity",
    () => {
      fc.assert(
        fc.property(jsonObject, fc.nat(), (start, spot) => {
          const live = liveOf(start);
          const before = live.getJob();
          const paths = pathsOf(start).filter((path) => path.length > 0);
          const path = paths[spot % Math.max(1, paths.length)];
          if (path === undefined) return;
          live.setValue(path, "something else altogether", "x");
          const touched = (other: Path) =>
            other.every((step, index) => step === path[index]) ||
            path.every((step, index) => step === other[index]);
          for (const other of pathsOf(start).filter((each) => !touched(each))) {
            expect(valueAt(live.getJob(), other)).toBe(valueAt(before, other));
          }
          expect(live.getJob()).not.toBe(before);
        }),
        { seed, numRuns: 200 },
      );
    },
    unhurried,
  );

  test(
    "[I9] undoing every edit gives the start back to the letter, redoing every one the end",
    () => {
      fc.assert(
        fc.property(jsonObject, fc.array(randomEdit, { maxLength: 12 }), (start, edits) => {
          const live = liveOf(start);
          for (const edit of edits) makeEdit(live, edit);
          const end = text(live);
          while (live.getUndoState().undo !== null) live.undo();
          expect(text(live)).toBe(JSON.stringify(start));
          while (live.getUndoState().redo !== null) live.redo();
          const undone = edits.some(({ kind }) => kind === "undo");
          if (!undone) expect(text(live)).toBe(end);
        }),
        { seed, numRuns: 200 },
      );
    },
    unhurried,
  );

  test(
    "[I9] a gesture, once abandoned, was never made",
    () => {
      fc.assert(
        fc.property(
          jsonObject,
          fc.array(randomEdit),
          fc.array(randomEdit, { minLength: 1 }),
          (start, edits, dragged) => {
            const isEdit = ({ kind }: { kind: string }) => kind !== "undo" && kind !== "redo";
            const live = liveOf(start);
            for (const edit of edits) makeEdit(live, edit);
            const before = { job: text(live), undo: live.getUndoState().undo };
            live.beginGesture("drag");
            for (const edit of dragged.filter(isEdit)) makeEdit(live, edit);
            live.abandonGesture();
            expect(text(live)).toBe(before.job);
            expect(live.getUndoState().undo).toBe(before.undo);
          },
        ),
        { seed, numRuns: 150 },
      );
    },
    unhurried,
  );
});

describe("replicas", () => {
  const made = fc.record({
    who: fc.nat(2),
    edit: randomEdit,
    fate: fc.constantFrom("sent", "sent", "lost", "twice", "late"),
  });

  test(
    "[T9] three that edit apart, with messages lost, repeated and out of order, end equal",
    () => {
      fc.assert(
        fc.property(jsonObject, fc.array(made, { maxLength: 40 }), (start, steps) => {
          const first = liveOf(start, 11);
          const replicas = [first, copyOf(first, 22), copyOf(first, 33)];
          const log: Uint8Array[] = [first.encodeState()];
          const late: (() => void)[] = [];
          let fate = "sent";
          for (const [index, replica] of replicas.entries()) {
            replica.onUpdate((update, origin) => {
              if (origin === "elsewhere") return;
              log.push(update);
              for (const other of replicas.filter((_, each) => each !== index)) {
                const deliver = () => other.applyUpdate(update, "elsewhere");
                if (fate === "late") late.unshift(deliver);
                else if (fate !== "lost") deliver();
                if (fate === "twice") deliver();
              }
            });
          }
          for (const step of steps) {
            fate = step.fate;
            makeEdit(replicas[step.who] as LiveJob, step.edit);
          }
          for (const deliver of late) deliver();
          // What was lost comes with the exchange of states, as it does when a device is back in reach.
          for (const one of replicas) {
            for (const other of replicas)
              other.applyUpdate(one.encodeState(other.encodeStateVector()), "elsewhere");
          }
          const [a, b, c] = replicas.map(text);
          expect(b).toBe(a);
          expect(c).toBe(a);
          // The tree that was kept up step by step is the one that a new reader builds; so is the log, compacted.
          expect(text(copyOf(first, 44))).toBe(a);
          const reader = new LiveJob(55);
          reader.applyUpdate(compactUpdates(log.toReversed()));
          expect(text(reader)).toBe(a);
        }),
        { seed, numRuns: 150 },
      );
    },
    unhurried,
  );

  test(
    "[T3] two edits of different values are both kept, also when one came as a whole new document",
    () => {
      fc.assert(
        fc.property(jsonObject, fc.nat(), fc.nat(), (start, spotA, spotB) => {
          const leaves = pathsOf(start).filter((path) => typeof valueAt(start, path) !== "object");
          if (leaves.length < 2) return;
          const a = leaves[spotA % leaves.length] as Path;
          const b = leaves[spotB % leaves.length] as Path;
          if (a === b || a.at(-1) === "id" || a.at(-1) === "name") return;
          const one = liveOf(start, 1);
          const two = copyOf(one, 2);
          const whole = structuredClone(start);
          (valueAt(whole, a.slice(0, -1)) as Record<string | number, unknown>)[a.at(-1) as string] = "first";
          one.setValue([], whole, "import");
          two.setValue(b, "second", "edit");
          two.applyUpdate(one.encodeState());
          one.applyUpdate(two.encodeState());
          expect(text(one)).toBe(text(two));
          expect(valueAt(one.getJob(), a)).toBe("first");
          expect(valueAt(one.getJob(), b)).toBe("second");
        }),
        { seed, numRuns: 200 },
      );
    },
    unhurried,
  );

  test(
    "[I9] undo takes back only what was done here",
    () => {
      fc.assert(
        fc.property(jsonObject, fc.array(randomEdit, { maxLength: 8 }), (start, theirs) => {
          const one = liveOf({ ...start, mine: 1 }, 1);
          const two = copyOf(one, 2);
          const keepsMine = theirs.filter(({ kind, key }) => kind === "setKey" && key !== "mine");
          for (const edit of keepsMine) makeEdit(two, edit);
          const expected = two.getJob() as unknown as Record<string, unknown>;
          one.setValue(["mine"], 2, "mine");
          one.applyUpdate(two.encodeState());
          one.undo();
          expect(one.getJob()).toEqual(expected);
        }),
        { seed, numRuns: 150 },
      );
    },
    unhurried,
  );
});
