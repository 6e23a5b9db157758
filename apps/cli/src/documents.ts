// The documents that the operations return and that `--json` prints as they are (rule I15).
import type { Finding, FindingSummary } from "@pintle/job";

/** One limit of one placement. Null numbers: not checked or not applicable. */
export type LimitDocument = Pick<Finding, "id" | "state" | "unit" | "value" | "limit" | "slack" | "atDeg">;

export interface PinsDocument {
  readonly postPin: { readonly alongMm: number; readonly outMm: number };
  readonly leafPin: { readonly alongMm: number; readonly offMm: number };
}

export interface PlacementDocument extends PinsDocument {
  readonly ram?: string;
  readonly riseMm?: number;
  readonly reserveMm: number;
  /** The reserve in plain words. */
  readonly reserveText: string;
  readonly firstToBreak: string | null;
  readonly limits: readonly LimitDocument[];
  /** What this one is better or worse at than its neighbours in the list, in words. */
  readonly tradeOffs?: readonly string[];
  /** Dimensions to measure on site, in the order of work (rule G17). */
  readonly settingOut?: readonly { readonly text: string }[];
}

export interface NothingFits {
  readonly binding: readonly string[];
  readonly changes: readonly {
    readonly kind: string;
    readonly by: number;
    readonly unit: string;
    readonly text: string;
  }[];
}

export interface PlaceDocument {
  readonly leaves: readonly {
    readonly id: string;
    readonly placements: readonly PlacementDocument[];
    readonly nothingFits: NothingFits | null;
    /** Why there was no search, in words: no ram, no reach. */
    readonly notSearched?: string;
  }[];
}

export interface CheckDocument {
  readonly findings: readonly Finding[];
  readonly summary: FindingSummary;
}

export interface SwingLeaf {
  readonly id: string;
  readonly thetaDeg: readonly number[];
  readonly pinToPinMm: readonly number[];
  readonly leverMm: readonly number[];
  readonly clearanceMm: readonly (number | null)[];
  readonly lengthClosedMm: number;
  readonly lengthOpenMm: number;
  readonly lengthMinMm: number;
  readonly lengthMaxMm: number;
  readonly leverMinMm: number;
  readonly leverMinAtDeg: number;
  readonly clearanceMinMm: number | null;
  readonly clearanceMinAtDeg: number | null;
  readonly monotonic: boolean;
}

export interface SwingDocument {
  readonly leaves: readonly SwingLeaf[];
}

export interface AsBuiltDocument {
  readonly leaves: readonly {
    readonly id: string;
    /** What the readings say, in sentences: where the pins are, what was misread, what one more would settle. */
    readonly lines: readonly string[];
    readonly pins: PinsDocument | null;
    readonly reserveMm: number | null;
    readonly reserveText: string | null;
    readonly firstToBreak: string | null;
    readonly limits: readonly LimitDocument[];
  }[];
}
