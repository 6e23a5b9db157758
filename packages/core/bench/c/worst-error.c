/* Port of src/placement/worst-error.ts: the worst pin error at one turn, and the largest that is survived. */
#include "search.h"

typedef struct {
  SlackFunction *f;
  const double *pins;
  double c, s, worst;
  double trial[4], slope[5];
  double *error, *worst_slope;
} Look;

static void look(Look *l) {
  double value = evaluate_slack(l->f, l->trial, l->c, l->s, l->slope);
  if (!(value < l->worst)) return;
  l->worst = value;
  for (int j = 0; j < 4; j++) l->error[j] = l->trial[j] - l->pins[j];
  memcpy(l->worst_slope, l->slope, sizeof l->slope);
}

static double likely_worst_slack(SlackFunction *f, const double pins[4], double reach, double c, double s,
                                 double error[4], double worst_slope[5]) {
  double low_end[4] = {0}, low_slope[4], high_end[4] = {0}, high_slope[4];
  Look l = {.f = f, .pins = pins, .c = c, .s = s, .worst = INFINITY, .error = error, .worst_slope = worst_slope};
  memcpy(l.trial, pins, sizeof l.trial);
  look(&l);
  for (int j = 0; j < 4; j++) low_slope[j] = high_slope[j] = NAN;
  bool settled = false;
  for (int round = 0; round < 12 && !settled; round++) {
    settled = true;
    for (int j = 0; j < 4; j++) {
      double g = l.slope[j], at = round == 0 ? 0 : l.trial[j] - pins[j];
      if (g > 0) {
        high_end[j] = at;
        high_slope[j] = g;
      } else {
        low_end[j] = at;
        low_slope[j] = g;
      }
      double next = g < 0 ? reach : -reach;
      if (!isnan(low_slope[j]) && !isnan(high_slope[j]) && low_end[j] < high_end[j]) {
        double a = low_end[j], b = high_end[j], ga = low_slope[j], gb = high_slope[j];
        next = a + ((b - a) * -ga) / (gb - ga);
      }
      if (fabs(next - at) > 1e-3 * reach) settled = false;
      l.trial[j] = pins[j] + next;
    }
    if (!settled) look(&l);
  }
  if (!settled) {
    for (int corner = 0; corner < 16; corner++) {
      for (int j = 0; j < 4; j++) l.trial[j] = pins[j] + ((corner >> j) & 1 ? reach : -reach);
      look(&l);
    }
  }
  return l.worst;
}

static bool pushes_against_bounds(const double error[4], const double worst_slope[5], double reach) {
  for (int j = 0; j < 4; j++) {
    if (fabs(error[j]) < (1 - 1e-9) * reach || error[j] * worst_slope[j] > 0) return false;
  }
  return true;
}

double worst_slack(SlackFunction *f, const double pins[4], double reach, double c, double s, double error[4],
                   double worst_slope[5]) {
  Look l = {.f = f, .pins = pins, .c = c, .s = s, .worst = INFINITY, .error = error, .worst_slope = worst_slope};
  if (bites_at_corners(f)) {
    for (int corner = 0; corner < 16; corner++) {
      for (int j = 0; j < 4; j++) l.trial[j] = pins[j] + ((corner >> j) & 1 ? reach : -reach);
      look(&l);
    }
    return l.worst;
  }
  l.worst = likely_worst_slack(f, pins, reach, c, s, error, worst_slope);
  if (l.worst == INFINITY) return l.worst;
  if (!pushes_against_bounds(error, worst_slope, reach)) {
    l.worst = fmin(l.worst, lowest_by_cuts(f, pins, reach, c, s, error, worst_slope));
  }
  double steepest = 0;
  for (int j = 0; j < 4; j++) steepest = fmax(steepest, fabs(worst_slope[j]));
  for (int j = 0; j < 4; j++) {
    if (fabs(worst_slope[j]) > 0.15 * steepest) continue;
    for (int k = 0; k < 4; k++) l.trial[k] = pins[k] + error[k];
    l.trial[j] = pins[j] + (error[j] > 0 ? -reach : reach);
    look(&l);
  }
  return l.worst;
}

static double steepness(const double slope[5]) {
  return 1e-12 + fabs(slope[0]) + fabs(slope[1]) + fabs(slope[2]) + fabs(slope[3]);
}

double reserve_at_turn(SlackFunction *f, const double pins[4], double ceiling, double c, double s, double error[4],
                       double worst_slope[5]) {
  double nominal = evaluate_slack(f, pins, c, s, worst_slope);
  memset(error, 0, 4 * sizeof(double));
  if (nominal <= 0) return 0;
  if (nominal == INFINITY) return ceiling;
  double low = 0, high = INFINITY, reach = nominal / steepness(worst_slope);
  for (int step = 0; step < 40; step++) {
    if (reach >= ceiling) {
      if (worst_slack(f, pins, ceiling, c, s, error, worst_slope) >= 0) return ceiling;
      high = fmin(high, ceiling);
      reach = fmin(0.5 * (low + ceiling), ceiling);
    }
    double slack = worst_slack(f, pins, reach, c, s, error, worst_slope);
    if (slack >= 0) low = reach;
    else high = reach;
    if (fabs(slack) < 1e-9) return fmax(low, reach - 1e-9);
    if (high - low < 1e-9) return low;
    double next = reach + slack / steepness(worst_slope);
    if (!(next > low && next < high)) next = high == INFINITY ? 2 * reach : 0.5 * (low + high);
    reach = next;
  }
  return low;
}
