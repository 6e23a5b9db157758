/* Port of src/search/linear-program.ts: a primal simplex on a tableau of at most 68 × 6. */
#include "search.h"

enum { DIMS = 4, COLUMNS = DIMS + 2 };

static double tableau[(MAX_ROWS + DIMS + 1) * COLUMNS];
static int basis[MAX_ROWS + DIMS], owners[COLUMNS];

static void pivot_on(int leave, int enter, int total) {
  double *from = tableau + leave * COLUMNS, inverse = 1 / from[enter];
  for (int j = 0; j < COLUMNS; j++) from[j] *= inverse;
  from[enter] = inverse;
  for (int i = 0; i <= total; i++) {
    if (i == leave) continue;
    double *row = tableau + i * COLUMNS, factor = row[enter];
    if (factor == 0) continue;
    for (int j = 0; j < COLUMNS; j++) {
      if (j != enter) row[j] -= factor * from[j];
    }
    row[enter] = -factor * inverse;
  }
}

double greatest_slack(const Rows *rows, const double half[4], double x[4]) {
  int m = rows->count, total = m;
  double start = INFINITY;
  for (int i = 0; i < m; i++) {
    double at_low = rows->b[i];
    for (int j = 0; j < DIMS; j++) at_low -= rows->a[i * DIMS + j] * half[j];
    tableau[i * COLUMNS + COLUMNS - 1] = at_low;
    start = fmin(start, at_low / rows->w[i]);
  }
  for (int i = 0; i < m; i++) {
    double *row = tableau + i * COLUMNS;
    for (int j = 0; j < DIMS; j++) row[j] = -rows->a[i * DIMS + j];
    row[DIMS] = rows->w[i];
    row[COLUMNS - 1] = fmax(0, row[COLUMNS - 1] - rows->w[i] * start);
    basis[i] = COLUMNS + i;
  }
  for (int j = 0; j < DIMS; j++) {
    double *row = tableau + total * COLUMNS;
    memset(row, 0, COLUMNS * sizeof(double));
    row[j] = 1;
    row[COLUMNS - 1] = 2 * half[j];
    basis[total] = COLUMNS + total;
    total++;
  }
  double *cost = tableau + total * COLUMNS;
  memset(cost, 0, COLUMNS * sizeof(double));
  cost[DIMS] = -1;
  for (int j = 0; j < COLUMNS - 1; j++) owners[j] = j;

  for (int pivots = 0;; pivots++) {
    if (pivots > 200) return INFINITY;
    int enter = -1;
    double steepest = -1e-12, lowest = INFINITY;
    for (int j = 0; j < COLUMNS - 1; j++) {
      if (cost[j] >= -1e-12) continue;
      if (pivots < 50 ? cost[j] < steepest : owners[j] < lowest) {
        steepest = cost[j];
        lowest = owners[j];
        enter = j;
      }
    }
    if (enter < 0) break;
    int leave = -1;
    double least = INFINITY;
    for (int i = 0; i < total; i++) {
      double pivot = tableau[i * COLUMNS + enter];
      if (pivot <= 1e-12) continue;
      double ratio = tableau[i * COLUMNS + COLUMNS - 1] / pivot;
      bool tied = leave >= 0 && fabs(ratio - least) <= 1e-15;
      if (ratio < least - 1e-15 || (tied && basis[i] < basis[leave])) {
        least = ratio;
        leave = i;
      }
    }
    if (leave < 0) return INFINITY;
    pivot_on(leave, enter, total);
    int owner = basis[leave];
    basis[leave] = owners[enter];
    owners[enter] = owner;
  }
  for (int j = 0; j < DIMS; j++) x[j] = -half[j];
  for (int i = 0; i < total; i++) {
    if (basis[i] < DIMS) x[basis[i]] += tableau[i * COLUMNS + COLUMNS - 1];
  }
  return start + cost[COLUMNS - 1];
}
