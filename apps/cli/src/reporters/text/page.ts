import type { Style } from "./style.ts";

/** What a report is written onto. */
export interface Page {
  readonly style: Style;
  readonly columns: number;
  /** Whether the plan is drawn. */
  readonly plan: boolean;
  /** A command of this program as a person would type it, for the job at hand: `again("check", "--plan")`. */
  readonly again: (command: string, ...options: readonly string[]) => string;
}

/** Wide enough for a table of limits, not wider than an eye follows. */
export function pageColumns(terminalColumns: number | undefined): number {
  return Math.min(120, Math.max(80, terminalColumns ?? 100));
}

/** The width that the environment names where no terminal does (the COLUMNS convention of shells). */
export function columnsAsked({ COLUMNS }: NodeJS.ProcessEnv): number | undefined {
  return COLUMNS !== undefined && /^\d{1,4}$/.test(COLUMNS) ? Number(COLUMNS) : undefined;
}
