import { type Display, type Job, type JobLeaf, type JobRam, ramFor, toSi } from "@pintle/job";
import { createContext, useCallback, useContext, useMemo, useState } from "react";
import { type Change, changed } from "../../jobs/change.ts";
import { type Gate, judgedGate } from "./gate.ts";

/** Something on the drawing that can be moved. */
export type Held =
  | { readonly kind: "postPin" | "leafPin" | "leaf" }
  | { readonly kind: "corner"; readonly thing: number; readonly corner: number };

/** The work on one leaf of one job: what is shown, what is held, and how it is changed. */
export interface Bench {
  /** The job as drawn, with what is being dragged already moved. */
  readonly job: Job;
  /** The job as it is kept: for what need not follow every frame of a drag. */
  readonly stored: Job;
  readonly leafIndex: number;
  readonly leaf: JobLeaf;
  readonly ram: JobRam | null;
  readonly display: Display;
  readonly gate: Gate | null;
  /** Angle at which the leaf is drawn [rad]. */
  readonly theta: number;
  readonly openAngle: number;
  readonly setTheta: (theta: number) => void;
  readonly held: Held | null;
  readonly hold: (held: Held | null) => void;
  /** Id of the limit whose place is marked on the drawing. */
  readonly marked: string | null;
  readonly mark: (limit: string | null) => void;
  /** Moves something without keeping it yet; `keep` ends the move. */
  readonly drag: (changes: readonly Change[], label: string) => void;
  readonly keepDrag: () => void;
  readonly dropDrag: () => void;
  readonly change: ChangeJob;
}

/**
 * Changes the job: one step for undo, called `label`. Changes of one `run` that follow each other shortly, such as
 * presses of an arrow key, are one step together.
 */
export type ChangeJob = (changes: readonly Change[], label: string, run?: string) => void;

export const BenchContext = createContext<Bench | null>(null);

export function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (bench === null) throw new Error("useBench found no bench; it expects to be inside BenchContext");
  return bench;
}

/** Holds what belongs to the screen and not to the job: the leaf's angle, what is held, what is marked. */
export function useNewBench(stored: Job, leafIndex: number, change: ChangeJob): Bench {
  const [draft, setDraft] = useState<{ changes: readonly Change[]; label: string } | null>(null);
  const [angle, setTheta] = useState(() => toSi(35, "deg"));
  const [held, hold] = useState<Held | null>(null);
  const [marked, mark] = useState<string | null>(null);
  const job = useMemo(() => (draft === null ? stored : changed(stored, draft.changes)), [stored, draft]);
  const leaf = job.leaves[leafIndex] as JobLeaf;
  const gate = useMemo(() => judgedGate(job, leaf), [job, leaf]);
  const openAngle = toSi(leaf.openAngleDeg, "deg");
  const keepDrag = useCallback(() => {
    if (draft !== null) change(draft.changes, draft.label);
    setDraft(null);
  }, [draft, change]);
  const drag = useCallback((changes: readonly Change[], label: string) => setDraft({ changes, label }), []);
  const dropDrag = useCallback(() => setDraft(null), []);
  return {
    job,
    stored,
    leafIndex,
    leaf,
    ram: ramFor(job, leaf),
    display: job.display ?? "metric",
    gate,
    theta: Math.min(angle, openAngle),
    openAngle,
    setTheta,
    held,
    hold,
    marked,
    mark,
    drag,
    keepDrag,
    dropDrag,
    change,
  };
}
