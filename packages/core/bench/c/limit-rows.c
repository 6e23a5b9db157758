/* Port of src/search/limit-rows.ts: the limits' lifted tangents as rows of a small linear program. */
#include "search.h"

static const double far_away = 0.3, near_by = 0.003, level = 0.2;

/* The row of a limit with the pins at `wrong` and the leaf at the turn `at`. */
static bool add_row_at(SlackFunction *f, const BoxQuestion *q, const PinMoves *moves, const double wrong[4], double at,
                       Rows *rows) {
  double slope[5], slack = evaluate_slack(f, wrong, cos(at), sin(at), slope);
  if (slack > far_away || rows->count == MAX_ROWS) return true;
  double excess = q->tangents_only ? 0 : slack_excess(f, moves, slope);
  if (excess == INFINITY) return true;
  double spread = 0, steep = 0;
  int row = rows->count;
  for (int j = 0; j < 4; j++) {
    rows->a[row * 4 + j] = slope[j];
    spread += fabs(slope[j]) * q->half[j];
    steep += fabs(slope[j]);
  }
  double weight = fmax(steep, 0.1), middle = slack + excess;
  if ((middle - spread) / weight >= rows->ceiling) return true;
  rows->ceiling = fmin(rows->ceiling, (middle + spread) / weight);
  rows->b[row] = middle;
  rows->w[row] = weight;
  rows->count++;
  return q->tangents_only || middle + spread >= 0;
}

static void set_wrong(const double centre[4], const double worst[4], int turned, double wrong[4]) {
  for (int j = 0; j < 4; j++) wrong[j] = centre[j] + (j == turned ? -worst[j] : worst[j]);
}

static bool add_row(SlackFunction *f, const BoxQuestion *q, const PinMoves *moves, double start, Rows *rows) {
  double worst[4] = {0}, wrong[4], worst_slope[5] = {0}, slope[5], at = start, least = 0;
  for (int round = 0; round < 3; round++) {
    if (q->target > 0) least = worst_slack(f, q->centre, q->target, cos(at), sin(at), worst, worst_slope);
    set_wrong(q->centre, worst, -1, wrong);
    if (ends_only(f)) break;
    double lowest = lowest_turn(f, wrong, at, q->end);
    bool settled = q->target == 0 || fabs(lowest - at) < 1e-3;
    at = lowest;
    if (settled) break;
  }
  if (!add_row_at(f, q, moves, wrong, at, rows)) return false;
  if (q->target == 0) return true;
  double steepest = 0;
  for (int j = 0; j < 4; j++) steepest = fmax(steepest, fabs(worst_slope[j]));
  for (int j = 0; j < 4; j++) {
    if (fabs(worst_slope[j]) > level * steepest) continue;
    set_wrong(q->centre, worst, j, wrong);
    if (evaluate_slack(f, wrong, cos(at), sin(at), slope) > least + near_by) continue;
    double turn = ends_only(f) ? at : lowest_turn(f, wrong, at, q->end);
    if (!add_row_at(f, q, moves, wrong, turn, rows)) return false;
  }
  return true;
}

static bool add_corner_rows(SlackFunction *f, const BoxQuestion *q, const PinMoves *moves, double at, Rows *rows) {
  double slope[5], c = cos(at), s = sin(at);
  double least = evaluate_slack(f, q->centre, c, s, slope), near = least + moves->both + q->target + near_by;
  bool found = false;
  for (int k = 0; k < f->corners; k++) {
    SlackFunction *corner = &f->corner_functions[k];
    double slack = evaluate_slack(corner, q->centre, c, s, slope);
    if (slack > near) continue;
    found = found || slack <= least + 1e-9;
    if (!add_row(corner, q, moves, at, rows)) return false;
  }
  return found || add_row(f, q, moves, at, rows);
}

bool limit_rows(Search *search, double side, const BoxQuestion *q, Rows *rows) {
  rows->count = 0;
  rows->ceiling = INFINITY;
  double post = hypot(q->half[0], q->half[1]), leaf = hypot(q->half[2], q->half[3]);
  PinMoves moves = {post, leaf, post + leaf};
  SlackFunction *functions = side == 1 ? search->left : search->right;
  for (int k = 0; k < search->functions; k++) {
    SlackFunction *f = &functions[k];
    if (ends_only(f)) {
      if (!add_row(f, q, &moves, 0, rows) || !add_row(f, q, &moves, q->end, rows)) return false;
      continue;
    }
    double at[MAX_LOW_TURNS];
    int count = find_low_turns(f, q->centre, q->end, q->target, far_away, at);
    for (int i = 0; i < count; i++) {
      if (!add_corner_rows(f, q, &moves, at[i], rows)) return false;
    }
  }
  return true;
}
