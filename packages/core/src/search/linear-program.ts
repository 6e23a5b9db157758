/** Pin coordinates in a program, and the rows it has room for. */
const dims = 4;
export const maxRows = 64;
const columns = dims + 2;

/** Rows a·x + b ≥ w·s of a small linear program, flat for speed: four numbers of `a` a row. */
export interface Rows {
  count: number;
  /** No row lets s exceed this; kept by whoever adds rows. */
  ceiling: number;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly w: Float64Array;
}

export const newRows = (): Rows => ({
  count: 0,
  ceiling: Number.POSITIVE_INFINITY,
  a: new Float64Array(maxRows * dims),
  b: new Float64Array(maxRows),
  w: new Float64Array(maxRows),
});

const tableau = new Float64Array((maxRows + dims + 1) * columns);
const basis = new Int32Array(maxRows + dims);

/**
 * The largest s with a·x + b ≥ w·s for every row (w > 0) and |x_j| ≤ half_j; leaves the x that attains it.
 *
 * A primal simplex on a tableau of at most 68 × 6: x is shifted to y = x + half ≥ 0 and s so far down that
 * y = 0 is feasible. Returns +∞ when it does not finish in 200 pivots, which as a ceiling is true and prunes
 * nothing.
 */
export function greatestSlack(rows: Rows, half: Float64Array, x: Float64Array): number {
  const m = rows.count;
  let start = Number.POSITIVE_INFINITY;
  for (let i = 0; i < m; i++) {
    let atLow = rows.b[i] as number;
    for (let j = 0; j < dims; j++) atLow -= (rows.a[i * dims + j] as number) * (half[j] as number);
    tableau[i * columns + columns - 1] = atLow;
    start = Math.min(start, atLow / (rows.w[i] as number));
  }
  // Variables y0..y3 and t = s − start ≥ 0; constraint w·t − a·y ≤ atLow − w·start.
  for (let i = 0; i < m; i++) {
    const row = i * columns;
    for (let j = 0; j < dims; j++) tableau[row + j] = -(rows.a[i * dims + j] as number);
    tableau[row + dims] = rows.w[i] as number;
    tableau[row + columns - 1] = Math.max(
      0,
      (tableau[row + columns - 1] as number) - (rows.w[i] as number) * start,
    );
    basis[i] = columns + i;
  }
  let total = m;
  for (let j = 0; j < dims; j++) {
    const row = total * columns;
    tableau.fill(0, row, row + columns);
    tableau[row + j] = 1;
    tableau[row + columns - 1] = 2 * (half[j] as number);
    basis[total] = columns + total;
    total++;
  }
  const cost = total * columns;
  tableau.fill(0, cost, cost + columns);
  tableau[cost + dims] = -1;
  // Which variable each column stands for: below `columns` an own variable, above it a row's slack.
  const nonbasic = columnOwner;
  for (let j = 0; j < columns - 1; j++) nonbasic[j] = j;

  for (let pivots = 0; ; pivots++) {
    if (pivots > 200) return Number.POSITIVE_INFINITY;
    // Most negative cost first; after 50 pivots the lowest-numbered, which cannot cycle (Bland's rule).
    let enter = -1;
    let steepest = -1e-12;
    let lowest = Number.POSITIVE_INFINITY;
    for (let j = 0; j < columns - 1; j++) {
      const c = tableau[cost + j] as number;
      if (c >= -1e-12) continue;
      if (pivots < 50 ? c < steepest : (nonbasic[j] as number) < lowest) {
        steepest = c;
        lowest = nonbasic[j] as number;
        enter = j;
      }
    }
    if (enter < 0) break;
    let leave = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < total; i++) {
      const pivot = tableau[i * columns + enter] as number;
      if (pivot <= 1e-12) continue;
      const ratio = (tableau[i * columns + columns - 1] as number) / pivot;
      const tied = Math.abs(ratio - least) <= 1e-15;
      if (ratio < least - 1e-15 || (tied && (basis[i] as number) < (basis[leave] as number))) {
        least = ratio;
        leave = i;
      }
    }
    if (leave < 0) return Number.POSITIVE_INFINITY;
    pivotOn(leave, enter, total);
    const owner = basis[leave] as number;
    basis[leave] = nonbasic[enter] as number;
    nonbasic[enter] = owner;
  }
  for (let j = 0; j < dims; j++) x[j] = -(half[j] as number);
  for (let i = 0; i < total; i++) {
    const owner = basis[i] as number;
    if (owner < dims) x[owner] = (x[owner] as number) + (tableau[i * columns + columns - 1] as number);
  }
  return start + (tableau[cost + columns - 1] as number);
}

const columnOwner = new Int32Array(columns);

/** Exchanges a basic row with a column in place: the column then carries the row's old variable. */
function pivotOn(leave: number, enter: number, total: number): void {
  const from = leave * columns;
  const inverse = 1 / (tableau[from + enter] as number);
  for (let j = 0; j < columns; j++) tableau[from + j] = (tableau[from + j] as number) * inverse;
  tableau[from + enter] = inverse;
  for (let i = 0; i <= total; i++) {
    if (i === leave) continue;
    const row = i * columns;
    const factor = tableau[row + enter] as number;
    if (factor === 0) continue;
    for (let j = 0; j < columns; j++) {
      if (j !== enter)
        tableau[row + j] = (tableau[row + j] as number) - factor * (tableau[from + j] as number);
    }
    tableau[row + enter] = -factor * inverse;
  }
}
