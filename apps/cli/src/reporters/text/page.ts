import type { Style } from "./style.ts";

/** What a report is written onto. */
export interface Page {
  readonly style: Style;
  readonly columns: number;
  /** Whether the plan is drawn. */
  readonly plan: boolean;
}

/** Wide enough for a drawing, not wider than an eye follows. */
export function pageColumns(terminalColumns: number | undefined): number {
  return Math.min(120, Math.max(60, terminalColumns ?? 100));
}
