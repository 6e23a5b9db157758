/** One row: what was measured, then a text for each further column. */
export type Row = readonly [string, ...string[]];

/** A time with three significant figures in the unit that suits it. */
export function shownTime(ms: number): string {
  if (!Number.isFinite(ms)) return "—";
  if (ms < 1) return `${(ms * 1000).toPrecision(3)} µs`;
  return ms < 1000 ? `${ms.toPrecision(3)} ms` : `${(ms / 1000).toPrecision(3)} s`;
}

export function shownRatio(ratio: number): string {
  if (!Number.isFinite(ratio)) return "—";
  return `${ratio < 10 ? ratio.toPrecision(2) : Math.round(ratio)} ×`;
}

/** Prints rows under headings: first column to the left, the others to the right. */
export function printTable(title: string, headings: Row, rows: readonly Row[]): void {
  if (rows.length === 0) return;
  const widths = headings.map((heading, column) =>
    Math.max(heading.length, ...rows.map((row) => (row[column] ?? "").length)),
  );
  const line = (row: Row) =>
    row
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0),
      )
      .join("  ");
  const text = [
    title,
    line(headings),
    widths.map((width) => "─".repeat(width)).join("  "),
    ...rows.map(line),
  ];
  process.stdout.write(`${text.join("\n")}\n\n`);
}
