import type { ChangeKind, DimensionId, LimitState, PlacementKind } from "@pintle/core";
import type { Finding, FindingSummary, FindingUnit } from "../findings/finding.ts";
import type { PatchStep } from "./patch-step.ts";

// The documents that the operations return and that `--json` prints as they are (rule I15). Millimetres,
// degrees, seconds, newtons; numbers are rounded to 1e-6 of their unit so that they read and compare well.

/** One limit of one placement. Null numbers: not checked or not applicable. */
export interface LimitDocument {
  readonly id: string;
  readonly state: LimitState;
  readonly unit: FindingUnit;
  readonly value: number | null;
  readonly limit: number | null;
  readonly slack: number | null;
  readonly atDeg: number | null;
}

export interface PinsDocument {
  readonly postPin: { readonly alongMm: number; readonly outMm: number };
  readonly leafPin: { readonly alongMm: number; readonly offMm: number };
  readonly riseMm: number;
}

export interface TradeOffsDocument {
  readonly leastLeverMm: number;
  readonly forceMargin: number | null;
  readonly toeSpeedMmS: number | null;
  readonly thrustAtToeN: number | null;
  readonly leafClearanceMm: number | null;
  readonly openingTimeS: number | null;
  readonly runOutMm: number;
  readonly standsOutMm: number;
}

export interface DimensionDocument {
  readonly id: DimensionId;
  readonly valueMm: number;
  readonly checks: readonly DimensionId[];
  readonly text: string;
}

export interface PlacementDocument extends PinsDocument {
  readonly kind: PlacementKind;
  /** In what this one is the best, in plain words. */
  readonly kindText: string;
  readonly ram: string;
  readonly postBracket: string;
  readonly leafBracket: string;
  readonly reserveMm: number;
  readonly reserveText: string;
  readonly firstToBreak: string | null;
  /** Which way the pins must be off to break it; null where no direction is known. */
  readonly firstToBreakText: string | null;
  readonly limits: readonly LimitDocument[];
  readonly tradeOffs: TradeOffsDocument;
  readonly tradeOffsText: readonly string[];
  readonly settingOut: {
    readonly leafIs: "open" | "closed";
    readonly dimensions: readonly DimensionDocument[];
  };
}

export interface ChangeDocument {
  readonly kind: ChangeKind;
  /** Signed; applied to the job it makes a placement fit, and 5 % less of it does not. */
  readonly by: number;
  readonly unit: "mm" | "deg";
  readonly text: string;
  /** The change as a JSON Patch (RFC 6902) on the job file; null where brackets would have to be chosen anew. */
  readonly patch: readonly PatchStep[] | null;
}

export interface NothingFitsDocument {
  readonly binding: readonly string[];
  readonly changes: readonly ChangeDocument[];
  readonly undecided: readonly ChangeKind[];
  /** The placement that comes nearest, for a look at what is in the way. */
  readonly nearest: (PinsDocument & { readonly limits: readonly LimitDocument[] }) | null;
}

export interface RamRankDocument {
  readonly ram: string;
  readonly reserveMm: number | null;
  readonly placement: PinsDocument | null;
  readonly tradeOffs: TradeOffsDocument | null;
  /** Why it does not suit, in plain words; empty when it does. */
  readonly reasons: readonly string[];
}

export interface MapDocument {
  readonly alongMm: readonly number[];
  readonly outMm: readonly number[];
  /** Row by row, out slow and along fast; negative: about so far from fitting; null: no leaf pin in reach. */
  readonly reserveMm: readonly (number | null)[];
  readonly leafPin: readonly ({ readonly alongMm: number; readonly offMm: number } | null)[];
}

export interface PlaceLeafDocument {
  readonly id: string;
  readonly placements: readonly PlacementDocument[];
  readonly nothingFits: NothingFitsDocument | null;
  /** Why there was no search or no certain answer, in words. */
  readonly notSearched?: string;
  readonly rams?: readonly RamRankDocument[];
  readonly map?: MapDocument;
}

export interface PlaceDocument {
  readonly leaves: readonly PlaceLeafDocument[];
}

export interface CheckDocument {
  readonly findings: readonly Finding[];
  readonly summary: FindingSummary & {
    /** Paths of values that are only assumed, defaults included. */
    readonly assumed: readonly string[];
  };
}

export interface TurnDocument {
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly throughDeg: number;
}

export interface SwingLeafDocument {
  readonly id: string;
  readonly thetaDeg: readonly number[];
  readonly pinToPinMm: readonly number[];
  readonly leverMm: readonly number[];
  readonly clearanceMm: readonly (number | null)[];
  readonly fixedClearanceMm: readonly (number | null)[];
  readonly toeSpeedMmS: readonly (number | null)[];
  readonly lengthClosedMm: number;
  readonly lengthOpenMm: number;
  readonly lengthMinMm: number;
  readonly lengthMaxMm: number;
  readonly leverMinMm: number;
  readonly leverMinAtDeg: number;
  readonly clearanceMinMm: number | null;
  readonly clearanceMinAtDeg: number | null;
  readonly monotonic: boolean;
  /** How far the ram turns in its two brackets (rule G8). */
  readonly postBracketTurn: TurnDocument;
  readonly leafBracketTurn: TurnDocument;
}

export interface SwingDocument {
  readonly leaves: readonly SwingLeafDocument[];
  /** Leaves that could not be swung and why. */
  readonly notSwung: readonly { readonly id: string; readonly why: string }[];
}

export interface AsBuiltLeafDocument {
  readonly id: string;
  /** What the readings say, in sentences. */
  readonly lines: readonly string[];
  readonly pins: PinsDocument | null;
  readonly standardErrorsMm: {
    readonly postPin: { readonly along: number; readonly out: number };
    readonly leafPin: { readonly along: number; readonly off: number };
  } | null;
  readonly openAngleDeg: number | null;
  readonly residuals: readonly {
    readonly path: string;
    readonly valueMm: number;
    readonly predictedMm: number;
    readonly normalised: number | null;
  }[];
  /** Paths of the readings most likely misread; more than one when they cannot be told apart. */
  readonly misread: readonly string[];
  /** Paths of readings that pins and limits are worked out without: the one misread, when it is only one. */
  readonly leftOut: readonly string[];
  readonly reserveMm: number | null;
  readonly reserveText: string | null;
  readonly firstToBreak: string | null;
  readonly limits: readonly LimitDocument[];
  /** The smallest move of one pin that mends what fails; empty when nothing fails or none does. */
  readonly mends: readonly {
    readonly pin: "postPin" | "leafPin";
    readonly alongMm: number;
    readonly acrossMm: number;
    readonly distanceMm: number;
    readonly pins: PinsDocument;
  }[];
}

export interface AsBuiltDocument {
  readonly leaves: readonly AsBuiltLeafDocument[];
}
