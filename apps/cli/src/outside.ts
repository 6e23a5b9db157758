import type { Terminal } from "./input/terminal.ts";
import type { Operations } from "./operations.ts";
import type { Style } from "./reporters/text/style.ts";

/** Everything that a command reaches outside itself; only main.ts builds the real one. */
export interface Outside {
  readonly operations: Operations;
  /** The program's output. */
  readonly print: (text: string) => void;
  /** Faults and notes: standard error. */
  readonly tell: (lines: readonly string[]) => void;
  /** The person at the terminal; null when nobody is there to answer. */
  readonly openTerminal: (() => Terminal) | null;
  readonly style: Style;
  readonly columns: number;
  /** How this program was called, for the commands that a report suggests. */
  readonly command: string;
  /** Whether a progress bar on standard error reaches a person. */
  readonly showsProgress: boolean;
  readonly cores: number;
}
