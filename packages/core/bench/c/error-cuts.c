/* Port of src/placement/error-cuts.ts: the worst error of a convex slack by cutting planes. */
#include "search.h"

enum { MAX_CUTS = 40 };

double lowest_by_cuts(SlackFunction *f, const double pins[4], double reach, double c, double s, double error[4],
                      double worst_slope[5]) {
  static Rows cuts;
  double half[4] = {reach, reach, reach, reach}, next[4], trial[4], slope[5], lowest = INFINITY;
  cuts.count = 0;
  memcpy(next, error, sizeof next);
  for (;;) {
    for (int j = 0; j < 4; j++) trial[j] = pins[j] + next[j];
    double slack = evaluate_slack(f, trial, c, s, slope);
    if (slack == INFINITY) return lowest;
    if (slack < lowest) {
      lowest = slack;
      memcpy(error, next, sizeof next);
      memcpy(worst_slope, slope, sizeof slope);
    }
    int at = cuts.count++;
    double there = slack;
    for (int j = 0; j < 4; j++) {
      cuts.a[at * 4 + j] = -slope[j];
      there -= slope[j] * next[j];
    }
    cuts.b[at] = -there;
    cuts.w[at] = 1;
    double promised = -greatest_slack(&cuts, half, next);
    if (!(lowest - promised > 1e-7) || cuts.count >= MAX_CUTS) return lowest;
  }
}
