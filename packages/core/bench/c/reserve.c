/* Port of src/placement/reserve.ts: the largest error in all four pin coordinates at once (rule G11). */
#include "model.h"

enum { ANGLE_SAMPLES = 33, MAX_CANDIDATES = 256 };

static const double CEILING = 0.5;

typedef struct {
  SlackFunction *f;
  double estimate, from, at, to;
} Candidate;

typedef struct {
  const double *pins;
  double reserve;
  double error[4], slope[5], first_error[4];
} Descent;

static double try_turn(Descent *d, SlackFunction *f, double phi, double ceiling) {
  double found = reserve_at_turn(f, d->pins, ceiling, cos(phi), sin(phi), d->error, d->slope);
  if (found < d->reserve) {
    d->reserve = found;
    memcpy(d->first_error, d->error, sizeof d->error);
  }
  return found;
}

static bool out_of_question(double estimate, double reserve) { return estimate > 1.25 * reserve + 0.002; }

typedef struct {
  double estimate[ANGLE_SAMPLES], rate[ANGLE_SAMPLES];
} Samples;

/* How low the estimate may fall between two samples: where their tangents meet. */
static double meeting(const Samples *at, int i) {
  double a = at->estimate[i], b = at->estimate[i + 1], fall = -at->rate[i], rise = at->rate[i + 1];
  if (!(fall > 0 && rise > 0) || a + b == INFINITY) return fmin(a, b);
  return fmin(fmin(a, b), (a * rise + b * fall - fall * rise) / (fall + rise));
}

static int promising_turns(SlackFunction *f, const double pins[4], double end, double least, Candidate *candidates) {
  double slope[5], step = end / (ANGLE_SAMPLES - 1);
  Samples samples;
  for (int i = 0; i < ANGLE_SAMPLES; i++) {
    double phi = step * i, slack = evaluate_slack(f, pins, cos(phi), sin(phi), slope);
    double steep = 1e-12 + fabs(slope[0]) + fabs(slope[1]) + fabs(slope[2]) + fabs(slope[3]);
    samples.estimate[i] = slack == INFINITY ? slack : slack / steep;
    samples.rate[i] = (slope[4] * step) / steep;
  }
  int count = 0, last = ANGLE_SAMPLES - 1;
  for (int i = 0; i <= last; i++) {
    double here = samples.estimate[i];
    if (i > 0 && here > samples.estimate[i - 1]) continue;
    if (here >= (i < last ? samples.estimate[i + 1] : INFINITY)) continue;
    double low = fmin(i > 0 ? meeting(&samples, i - 1) : here, i < last ? meeting(&samples, i) : here);
    if (out_of_question(low, least)) continue;
    candidates[count++] =
        (Candidate){f, low, step * (i > 0 ? i - 1 : 0), step * i, step * (i < last ? i + 1 : last)};
  }
  return count;
}

/* Descends to the least value between `from` and `to`, by parabolas, golden section where they do not help. */
static void least_around(Descent *d, SlackFunction *f, double a, double x, double b) {
  double at_x = try_turn(d, f, x, CEILING);
  double at_a = x == a ? at_x : try_turn(d, f, a, CEILING), at_b = x == b ? at_x : try_turn(d, f, b, CEILING);
  if (x == a || x == b) {
    double inner = x + 0.06 * (a + b - 2 * x), at_inner = try_turn(d, f, inner, CEILING);
    if (at_inner >= at_x) return;
    x = inner;
    at_x = at_inner;
  }
  for (int step = 0; step < 24 && fabs(b - a) > 5e-5; step++) {
    double p = (x - a) * (at_x - at_b), q = (x - b) * (at_x - at_a);
    double next = x - 0.5 * (((x - a) * p - (x - b) * q) / (p - q));
    double margin = 0.02 * fabs(b - a);
    bool inside = fmin(a, b) + margin < next && next < fmax(a, b) - margin;
    if (!inside || fabs(next - x) < 1e-5) next = fabs(b - x) > fabs(x - a) ? x + 0.382 * (b - x) : x - 0.382 * (x - a);
    double at_next = try_turn(d, f, next, CEILING);
    bool beyond = (next - x) * (b - a) > 0;
    if (at_next < at_x) {
      if (beyond) a = x, at_a = at_x;
      else b = x, at_b = at_x;
      x = next;
      at_x = at_next;
    } else if (beyond) b = next, at_b = at_next;
    else a = next, at_a = at_next;
    if (fmax(at_a, at_b) - at_x < 1e-7) return;
  }
}

static double feasible_reserve(const Case *c, const double pins[4]) {
  double end = c->turn_sign * c->open_angle;
  SlackFunction functions[MAX_FUNCTIONS];
  int n = slack_functions(c, orientation_of(pins), functions);
  Descent d = {.pins = pins, .reserve = CEILING};
  for (int i = 0; i < n; i++) {
    if (!ends_only(&functions[i])) continue;
    try_turn(&d, &functions[i], 0, d.reserve);
    try_turn(&d, &functions[i], end, d.reserve);
  }
  Candidate candidates[MAX_CANDIDATES];
  int count = 0;
  for (int i = 0; i < n; i++) {
    if (ends_only(&functions[i])) continue;
    count += promising_turns(&functions[i], pins, end, d.reserve, candidates + count);
  }
  for (int i = 1; i < count; i++) {
    Candidate one = candidates[i];
    int k = i;
    for (; k > 0 && candidates[k - 1].estimate > one.estimate; k--) candidates[k] = candidates[k - 1];
    candidates[k] = one;
  }
  for (int i = 0; i < count && !out_of_question(candidates[i].estimate, d.reserve); i++) {
    least_around(&d, candidates[i].f, candidates[i].from, candidates[i].at, candidates[i].to);
  }
  return d.reserve;
}

Reserve reserve_of(const Case *c, const double pins[4]) {
  Limit limits[MAX_LIMITS];
  int n = limits_of(c, pins, limits);
  bool broken = false, in_metres = false;
  for (int i = 0; i < n; i++) {
    broken = broken || limits[i].fails;
    in_metres = in_metres || (limits[i].fails && limits[i].in_metres);
  }
  if (!broken) return (Reserve){true, feasible_reserve(c, pins)};
  double worst = -INFINITY;
  for (int i = 0; i < n; i++) {
    if (!limits[i].fails || limits[i].in_metres != in_metres) continue;
    double share = limits[i].limit == 0 ? 1 : limits[i].limit;
    worst = fmax(worst, in_metres ? -limits[i].slack : (-limits[i].slack / share) * 1e-3);
  }
  return (Reserve){false, -worst};
}
