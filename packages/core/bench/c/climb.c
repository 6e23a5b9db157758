/* Port of src/search/climb.ts: from a start to a placement near which no better reserve is in sight. */
#include "search.h"

Score score_of(Search *s, const double pins[4]) {
  static const double no_move[4] = {0};
  Rows rows;
  BoxQuestion question = {s->end, 0, pins, no_move, true};
  limit_rows(s, orientation_of(pins), &question, &rows);
  double worst = INFINITY;
  for (int i = 0; i < rows.count; i++) worst = fmin(worst, rows.b[i] / rows.w[i]);
  if (worst < 0) return (Score){false, worst};
  Reserve reserve = reserve_of(s->c, pins);
  return (Score){reserve.feasible, reserve.feasible ? reserve.reserve : fmin(reserve.reserve, -1e-9)};
}

Score climb(Search *s, const Cell *cell, const double start[4], double pins[4]) {
  for (int j = 0; j < 4; j++) pins[j] = fmin(fmax(start[j], cell->low[j]), cell->high[j]);
  Score score = score_of(s, pins);
  double trust = 0.08;
  for (int step = 0; step < 40 && trust > 2e-5; step++) {
    double half[4], shift[4], next[4];
    Rows rows;
    for (int j = 0; j < 4; j++) {
      double low = fmax(cell->low[j], pins[j] - trust), high = fmin(cell->high[j], pins[j] + trust);
      half[j] = 0.5 * (high - low);
      shift[j] = 0.5 * (high + low) - pins[j];
    }
    BoxQuestion question = {s->end, fmax(0, score.value), pins, half, true};
    limit_rows(s, orientation_of(pins), &question, &rows);
    for (int i = 0; i < rows.count; i++) {
      for (int j = 0; j < 4; j++) rows.b[i] += rows.a[i * 4 + j] * shift[j];
    }
    memset(next, 0, sizeof next);
    greatest_slack(&rows, half, next);
    for (int j = 0; j < 4; j++) next[j] = fmin(fmax(pins[j] + shift[j] + next[j], cell->low[j]), cell->high[j]);
    Score next_score = score_of(s, next);
    bool better = next_score.feasible == score.feasible ? next_score.value > score.value + 1e-7 : next_score.feasible;
    if (better) {
      memcpy(pins, next, sizeof next);
      score = next_score;
      trust = fmin(0.2, trust * 1.6);
    } else {
      trust *= 0.35;
    }
  }
  return score;
}
