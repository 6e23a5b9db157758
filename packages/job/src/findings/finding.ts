import type { LimitState } from "@pintle/core";

/** Unit of a finding's numbers, as the job file writes them. */
export type FindingUnit = "mm" | "deg" | "ratio";

/**
 * One verdict about a leaf, as data. Made once here and worded once here, so that every face says the same.
 *
 * "not-checked" is neither silence nor a pass: something needed to judge is missing, and `text` says what.
 */
export interface Finding {
  /** Rule that it comes from, such as `G10`; a heading in docs/rules.md. */
  readonly rule: string;
  /** What was judged, such as `clearance.leaf`. */
  readonly id: string;
  readonly state: LimitState;
  /** Id of the leaf. */
  readonly leaf: string;
  readonly value: number | null;
  readonly limit: number | null;
  /** How far inside (≥ 0) or outside (< 0) the limit, in `unit`. */
  readonly slack: number | null;
  readonly unit: FindingUnit;
  /** Leaf angle from closed at which the value occurs. */
  readonly atDeg: number | null;
  /** Where the limit comes from: `job`, `common practice, no source`, or `geometry` for what cannot be otherwise. */
  readonly source: string;
  /** Path in the job of what decides the limit. */
  readonly path: string;
  /** Plain words in the job's display units. */
  readonly text: string;
}

/** How many findings there are of each state. */
export interface FindingSummary {
  readonly pass: number;
  readonly fail: number;
  readonly notChecked: number;
  readonly notApplicable: number;
}

/**
 * Counts findings by state.
 *
 * ### Example
 *   expect(findingSummary([])).toEqual({ pass: 0, fail: 0, notChecked: 0, notApplicable: 0 });
 */
export function findingSummary(findings: readonly Finding[]): FindingSummary {
  const count = (state: LimitState) => findings.filter((finding) => finding.state === state).length;
  return {
    pass: count("pass"),
    fail: count("fail"),
    notChecked: count("not-checked"),
    notApplicable: count("not-applicable"),
  };
}

/**
 * A finding for something that could not be judged; `text` says in plain words what is missing.
 *
 * ### Example
 *   const finding = notChecked({ rule: "G10", id: "placement", leaf: "east", path: "leaves[0].ram", text: "Placement: not checked; no ram is chosen" });
 *   expect(finding.state).toBe("not-checked");
 */
export function notChecked(what: Pick<Finding, "rule" | "id" | "leaf" | "path" | "text">): Finding {
  return {
    rule: what.rule,
    id: what.id,
    state: "not-checked",
    leaf: what.leaf,
    value: null,
    limit: null,
    slack: null,
    unit: "ratio",
    atDeg: null,
    source: "job",
    path: what.path,
    text: what.text,
  };
}
