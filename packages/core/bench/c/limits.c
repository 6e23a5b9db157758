/* Port of src/placement/limits.ts: every limit of rule G10 for one placement. */
#include "model.h"

static Limit judged(bool in_metres, double value, double limit, double slack, double at, double x, double y) {
  Limit one = {in_metres, !(slack >= 0), value, limit, slack, at, x, y};
  return one;
}

int limits_of(const Case *c, const double pins[4], Limit *limits) {
  LengthRange range = length_range(c, pins);
  TravelRates rates = travel_rates(pins, c->rise, &range);
  AtAngle lever = least_lever(c, pins), thrust = least_thrust_angle(c, pins);
  int n = 0;
  limits[n++] = judged(true, range.least, c->shortest, range.least - c->shortest, range.least_at, 0, 0);
  limits[n++] = judged(true, range.greatest, c->longest, c->longest - range.greatest, range.greatest_at, 0, 0);
  limits[n++] = judged(true, lever.value, c->need_lever, lever.value - c->need_lever, lever.at_angle, 0, 0);
  limits[n++] = judged(false, thrust.value, c->need_dead_centre, thrust.value - c->need_dead_centre,
                       thrust.at_angle, 0, 0);
  for (int id = 0; id < c->check_limits; id++) {
    LeastGap least = {INFINITY, 0, 0, 0};
    double need = 0;
    for (int k = 0; k < c->checks; k++) {
      if (c->check[k].limit != id) continue;
      need = c->check[k].need;
      LeastGap gap = least_gap(c, &c->check[k], pins, &rates);
      if (gap.gap < least.gap) least = gap;
    }
    if (least.gap == INFINITY) continue;
    limits[n++] = judged(true, least.gap, need, least.gap - need, least.at_angle, least.x, least.y);
  }
  for (int k = 0; k < c->sweeps; k++) {
    double gap = c->sweep_gap[k];
    limits[n++] = judged(true, gap, c->need_sweep, gap - c->need_sweep, 0, 0, 0);
  }
  return n;
}
