/* What the parts of the search share. Port of src/search, for one cell of continuous ranges. */
#ifndef PINTLE_BENCH_SEARCH_H
#define PINTLE_BENCH_SEARCH_H

#include "model.h"

enum { MAX_ROWS = 64, MAX_LOW_TURNS = 12, MAX_CORNER_FUNCTIONS = 256 };

typedef struct {
  int count;
  double ceiling;
  double a[MAX_ROWS * 4], b[MAX_ROWS], w[MAX_ROWS];
} Rows;

typedef struct {
  double low[4], high[4];
} Cell;

typedef struct {
  const Case *c;
  double end;
  int functions;
  SlackFunction left[MAX_FUNCTIONS], right[MAX_FUNCTIONS];
  SlackFunction corners[2 * MAX_CORNER_FUNCTIONS];
} Search;

/* What is asked of a box of placements: may one within ±half of `centre` survive errors of `target`? */
typedef struct {
  double end, target;
  const double *centre, *half;
  bool tangents_only;
} BoxQuestion;

typedef struct {
  bool feasible;
  double value;
} Score;

typedef struct {
  bool found;
  double pins[4], reserve;
  int boxes;
} Found;

bool limit_rows(Search *search, double side, const BoxQuestion *question, Rows *rows);
int find_low_turns(SlackFunction *f, const double pins[4], double end, double target, double enough, double *at);
double lowest_turn(SlackFunction *f, const double pins[4], double start, double end);
double greatest_slack(const Rows *rows, const double half[4], double x[4]);
double lowest_by_cuts(SlackFunction *f, const double pins[4], double reach, double c, double s, double error[4],
                      double worst_slope[5]);
Score score_of(Search *s, const double pins[4]);
Score climb(Search *s, const Cell *cell, const double start[4], double pins[4]);
Found best_placement(const Case *c);

#endif
