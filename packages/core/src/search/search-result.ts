import type { Placement } from "../linkage/pins.ts";
import type { Cell } from "./cell.ts";

/** How a long calculation is watched and stopped. `progress` receives the share done, 0 … 1, never falling. */
export interface Watch {
  readonly progress?: (share: number) => void;
  readonly signal?: { readonly aborted: boolean };
}

export interface SearchOptions extends Watch {
  /** How far below the true optimum the reserve found may lie [m]; default 0.05 mm, relaxed to 0.45 mm at most where
   * the optimum is very flat. `ceiling` of the result says what was reached. */
  readonly tolerance?: number;
  /** Boxes looked at before the search stops short; default 200,000. */
  readonly maxBoxes?: number;
  /** Stop as soon as a placement with at least this reserve is known [m]; for yes-or-no questions. */
  readonly enough?: number;
}

/** What a search found. */
export type SearchResult =
  | {
      readonly status: "found";
      readonly placement: Placement;
      readonly reserve: number;
      /** No placement in reach has a reserve above this [m]. */
      readonly ceiling: number;
      readonly cell: Cell;
      readonly boxes: number;
    }
  /** No placement in reach keeps every limit, to within 0.01 mm of pin position. `nearest` breaks least. */
  | { readonly status: "nothing-fits"; readonly nearest: Placement | null; readonly boxes: number }
  /** Stopped by the signal or at `maxBoxes` before the answer was certain. */
  | {
      readonly status: "stopped";
      readonly why: "aborted" | "box-limit";
      readonly best: Placement | null;
      readonly reserve: number | null;
      readonly boxes: number;
    };
