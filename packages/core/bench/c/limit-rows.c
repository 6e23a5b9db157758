/* Port of src/search/limit-rows.ts: the limits' lifted tangents as rows of a small linear program. */
#include "search.h"

static double steepness(const double slope[5]) {
  return fabs(slope[0]) + fabs(slope[1]) + fabs(slope[2]) + fabs(slope[3]);
}

typedef struct {
  Search *s;
  const double *centre, *half;
  double target;
  PinMoves moves;
  Rows *rows;
  bool tangents_only;
} Ask;

/* The slack at the wrong pins where it is lowest between the neighbours of a sampled turn, and its slope. */
static double slack_at_lowest_turn(const Search *s, SlackFunction *f, const double wrong[4], int turn,
                                   double slope[5]) {
  double at = s->phi[turn], slack = evaluate_slack(f, wrong, cos(at), sin(at), slope), rate = slope[4];
  int next = turn + ((rate > 0) == (s->phi[TURN_SAMPLES - 1] > 0) ? -1 : 1);
  if (next < 0 || next >= TURN_SAMPLES || slack == INFINITY) return slack;
  double far = s->phi[next];
  evaluate_slack(f, wrong, cos(far), sin(far), slope);
  double far_rate = slope[4];
  for (int step = 0; step < 4 && rate * far_rate < 0; step++) {
    double middle = at + ((far - at) * rate) / (rate - far_rate);
    slack = evaluate_slack(f, wrong, cos(middle), sin(middle), slope);
    double middle_rate = slope[4];
    if (middle_rate * rate > 0) {
      at = middle;
      rate = middle_rate;
      far_rate *= 0.5;
    } else {
      far = middle;
      far_rate = middle_rate;
      rate *= 0.5;
    }
    if (fabs(middle_rate) < 1e-3) return slack;
  }
  return evaluate_slack(f, wrong, cos(at), sin(at), slope);
}

static bool add_row(const Ask *ask, SlackFunction *f, int turn) {
  double c = ask->s->cos[turn], s = ask->s->sin[turn], slope[5], wrong[4] = {0};
  if (ask->target > 0) worst_slack(f, ask->centre, ask->target, c, s, wrong, slope);
  for (int j = 0; j < 4; j++) wrong[j] = ask->centre[j] + wrong[j];
  double slack = ends_only(f) ? evaluate_slack(f, wrong, c, s, slope)
                              : slack_at_lowest_turn(ask->s, f, wrong, turn, slope);
  if (slack == INFINITY) return true;
  double excess = ask->tangents_only ? 0 : slack_excess(f, &ask->moves, slope);
  if (excess == INFINITY) return true;
  Rows *rows = ask->rows;
  double most = slack + excess, steep = 0;
  int at = rows->count;
  for (int j = 0; j < 4; j++) {
    rows->a[at * 4 + j] = slope[j];
    most += fabs(slope[j]) * ask->half[j];
    steep += fabs(slope[j]);
  }
  rows->b[at] = slack + excess;
  rows->w[at] = fmax(steep, 0.1);
  rows->count = at + 1;
  return ask->tangents_only || most >= 0;
}

bool limit_rows(Search *s, SlackFunction *functions, const double centre[4], const double half[4], double target,
                Rows *rows, bool tangents_only) {
  rows->count = 0;
  double post = hypot(half[0], half[1]), leaf = hypot(half[2], half[3]);
  Ask ask = {s, centre, half, target, {post, leaf, post + leaf}, rows, tangents_only};
  int last = TURN_SAMPLES - 1;
  for (int k = 0; k < s->functions; k++) {
    SlackFunction *f = &functions[k];
    if (ends_only(f)) {
      if (!add_row(&ask, f, 0) || !add_row(&ask, f, last)) return false;
      continue;
    }
    double estimates[TURN_SAMPLES], slope[5];
    for (int i = 0; i < TURN_SAMPLES; i++) {
      double slack = evaluate_slack(f, centre, s->cos[i], s->sin[i], slope);
      estimates[i] = slack - target * steepness(slope);
    }
    for (int i = 0; i < TURN_SAMPLES; i++) {
      double here = estimates[i];
      if (here == INFINITY || (i > 0 && estimates[i - 1] < here) || (i < last && estimates[i + 1] <= here)) continue;
      if (!add_row(&ask, f, i)) return false;
    }
  }
  return true;
}
