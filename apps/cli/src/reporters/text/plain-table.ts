import Table from "cli-table3";

const noFrame = { top: "", "top-mid": "", "top-left": "", "top-right": "", bottom: "", "bottom-mid": "" };
const noLines = { "bottom-left": "", "bottom-right": "", left: "", "left-mid": "", mid: "", "mid-mid": "" };
const noEdges = { right: "", "right-mid": "", middle: "  " };

export interface TableColumn {
  readonly head: string;
  readonly align: "left" | "right";
  /** Widest that the column may be; longer texts are broken between words. */
  readonly widest?: number;
}

/** A table without lines, two spaces between its columns. */
export function plainTable(columns: readonly TableColumn[], rows: readonly (readonly string[])[]): string[] {
  const table = new Table({
    head: columns.map(({ head }) => head),
    colAligns: columns.map(({ align }) => align),
    colWidths: columns.map(({ widest }) => widest ?? null),
    wordWrap: true,
    chars: { ...noFrame, ...noLines, ...noEdges },
    style: { head: [], border: [], "padding-left": 0, "padding-right": 0 },
  });
  table.push(...rows.map((row) => [...row]));
  return table
    .toString()
    .split("\n")
    .map((line) => line.trimEnd());
}
