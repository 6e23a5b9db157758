/* What the parts of the search share. Port of src/search, for one cell of continuous ranges. */
#ifndef PINTLE_BENCH_SEARCH_H
#define PINTLE_BENCH_SEARCH_H

#include "model.h"

enum { TURN_SAMPLES = 9, MAX_ROWS = 64 };

typedef struct {
  int count;
  double a[MAX_ROWS * 4], b[MAX_ROWS], w[MAX_ROWS];
} Rows;

typedef struct {
  double low[4], high[4];
} Cell;

typedef struct {
  const Case *c;
  double phi[TURN_SAMPLES], cos[TURN_SAMPLES], sin[TURN_SAMPLES];
  int functions;
  SlackFunction left[MAX_FUNCTIONS], right[MAX_FUNCTIONS];
} Search;

typedef struct {
  bool feasible;
  double value;
} Score;

typedef struct {
  bool found;
  double pins[4], reserve;
  int boxes;
} Found;

static inline SlackFunction *functions_for(Search *s, double side) { return side == 1 ? s->left : s->right; }

bool limit_rows(Search *s, SlackFunction *functions, const double centre[4], const double half[4], double target,
                Rows *rows, bool tangents_only);
double greatest_slack(const Rows *rows, const double half[4], double x[4]);
Score score_of(Search *s, const double pins[4]);
Score climb(Search *s, const Cell *cell, const double start[4], double pins[4]);
Found best_placement(const Case *c, double tolerance);

#endif
