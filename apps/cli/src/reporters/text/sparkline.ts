const levels = ["▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"];

/**
 * A series as a row of `columns` bars, least to greatest from the lowest to the highest; a blank where there is
 * no value. Each bar shows the value of the sample nearest to it.
 */
export function sparkline(values: readonly (number | null)[], columns: number): string {
  const known = values.filter((value) => value !== null);
  const [least, greatest] = [Math.min(...known), Math.max(...known)];
  const bars = Array.from({ length: columns }, (_, column) => {
    const at = columns < 2 ? 0 : Math.round((column * (values.length - 1)) / (columns - 1));
    const value = values[at] ?? null;
    if (value === null) return " ";
    const share = greatest > least ? (value - least) / (greatest - least) : 0.5;
    return levels[Math.min(levels.length - 1, Math.floor(share * levels.length))] ?? " ";
  });
  return bars.join("");
}
