/* Port of src/search/low-turns.ts: the turns at which a limit looks worst, to first order. */
#include "search.h"

enum { COARSE = 9, FINE = 4, MOST = MAX_LOW_TURNS };

static bool is_local_minimum(const double *values, int count, int i) {
  double here = values[i];
  if (here == INFINITY || (i > 0 && values[i - 1] < here)) return false;
  return i + 1 == count || values[i + 1] > here;
}

static double estimate(SlackFunction *f, const double pins[4], double phi, double target) {
  double slope[5], slack = evaluate_slack(f, pins, cos(phi), sin(phi), slope);
  return slack - target * (fabs(slope[0]) + fabs(slope[1]) + fabs(slope[2]) + fabs(slope[3]));
}

int find_low_turns(SlackFunction *f, const double pins[4], double end, double target, double enough, double *at) {
  double coarse[COARSE], fine[2 * FINE + 1], step = end / (COARSE - 1), small = step / FINE;
  int found = 0;
  for (int i = 0; i < COARSE; i++) coarse[i] = estimate(f, pins, step * i, target);
  for (int i = 0; i < COARSE; i++) {
    if (!is_local_minimum(coarse, COARSE, i) || coarse[i] > enough) continue;
    int first = i > 0 ? i - 1 : 0, last = i + 1 < COARSE ? i + 1 : COARSE - 1, count = (last - first) * FINE + 1;
    for (int k = 0; k < count; k++) {
      fine[k] =
          k % FINE == 0 ? coarse[first + k / FINE] : estimate(f, pins, step * first + small * k, target);
    }
    for (int k = 0; k < count && found < MOST; k++) {
      if (is_local_minimum(fine, count, k)) at[found++] = step * first + small * k;
    }
  }
  return found;
}

static double inside(double phi, double end) { return end > 0 ? fmin(fmax(phi, 0), end) : fmax(fmin(phi, 0), end); }

double lowest_turn(SlackFunction *f, const double pins[4], double start, double end) {
  double slope[5], step = fabs(end) / ((COARSE - 1) * FINE), lowest = start;
  double least = evaluate_slack(f, pins, cos(start), sin(start), slope), near = start, rate = slope[4];
  if (least == INFINITY || rate == 0) return start;
  double far = near, far_rate = rate;
  for (int walked = 0; walked < (COARSE - 1) * FINE / 2 && rate * far_rate > 0; walked++) {
    near = far;
    rate = far_rate;
    far = inside(near - (rate > 0 ? step : -step), end);
    if (far == near) break;
    double slack = evaluate_slack(f, pins, cos(far), sin(far), slope);
    far_rate = slope[4];
    if (slack < least) least = slack, lowest = far;
    else if (rate * far_rate > 0) break;
  }
  for (int round = 0; round < 4 && rate * far_rate < 0; round++) {
    double middle = near + ((far - near) * rate) / (rate - far_rate);
    double slack = evaluate_slack(f, pins, cos(middle), sin(middle), slope), middle_rate = slope[4];
    if (slack < least) least = slack, lowest = middle;
    if (fabs(middle_rate) < 1e-3) break;
    if (middle_rate * rate > 0) {
      near = middle;
      rate = middle_rate;
      far_rate *= 0.5;
    } else {
      far = middle;
      far_rate = middle_rate;
      rate *= 0.5;
    }
  }
  return lowest;
}
