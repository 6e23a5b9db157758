/* Port of src/linkage: polar constants, lengths, lever arm, dead centre (rules G5, G6). */
#include "model.h"

#define PI 3.14159265358979323846

Crank crank_of(const Case *c, const double pins[4]) {
  Crank crank = {
      .post_radius = hypot(pins[0], pins[1]),
      .leaf_radius = hypot(pins[2], pins[3]),
      .closed_angle = atan2(pins[1], pins[0]) - atan2(pins[3], pins[2]),
      .angle_sign = c->turn_sign == 1 ? -1 : 1,
      .rise = c->rise,
      .open_angle = c->open_angle,
  };
  return crank;
}

static double plan_length(const Crank *crank, double psi) {
  double rho = crank->post_radius, g = crank->leaf_radius, half = sin(psi / 2);
  return sqrt((rho - g) * (rho - g) + 4 * rho * g * half * half);
}

double true_length(const Crank *crank, double psi) {
  double plan = plan_length(crank, psi);
  return sqrt(plan * plan + crank->rise * crank->rise);
}

static double length_at(const Crank *crank, double theta) {
  return true_length(crank, crank->closed_angle + crank->angle_sign * theta);
}

double lever_at_psi(const Crank *crank, double psi) {
  double length = true_length(crank, psi);
  return length == 0 ? 0 : (crank->post_radius * crank->leaf_radius * fabs(sin(psi))) / length;
}

static int dead_centre_angles(const Crank *crank, double at[8]) {
  if (crank->post_radius == 0 || crank->leaf_radius == 0) {
    at[0] = 0;
    return 1;
  }
  int count = 0;
  for (int k = -3; k <= 3; k++) {
    double theta = (k * PI - crank->closed_angle) * crank->angle_sign;
    if (theta >= 0 && theta <= crank->open_angle) at[count++] = theta;
  }
  return count;
}

LengthRange length_range(const Case *c, const double pins[4]) {
  Crank crank = crank_of(c, pins);
  double at[10] = {0, crank.open_angle};
  int dead = dead_centre_angles(&crank, at + 2);
  LengthRange range = {.least = INFINITY, .greatest = 0, .monotonic = dead == 0};
  for (int i = 0; i < 2 + dead; i++) {
    double value = length_at(&crank, at[i]);
    if (value < range.least) {
      range.least = value;
      range.least_at = at[i];
    }
    if (value > range.greatest) {
      range.greatest = value;
      range.greatest_at = at[i];
    }
  }
  range.closed = length_at(&crank, 0);
  range.open = length_at(&crank, crank.open_angle);
  return range;
}

static AtAngle lesser_end(const Crank *crank, double closed, double open) {
  AtAngle least = {closed <= open ? closed : open, closed <= open ? 0 : crank->open_angle};
  return least;
}

AtAngle least_lever(const Case *c, const double pins[4]) {
  Crank crank = crank_of(c, pins);
  double dead[8];
  if (dead_centre_angles(&crank, dead) > 0) return (AtAngle){0, dead[0]};
  return lesser_end(&crank, lever_at_psi(&crank, crank.closed_angle),
                    lever_at_psi(&crank, crank.closed_angle + crank.angle_sign * crank.open_angle));
}

static double angle_at_leaf_pin(const Crank *crank, double psi) {
  if (plan_length(crank, psi) == 0) return 0;
  return atan2(crank->post_radius * fabs(sin(psi)), fabs(crank->leaf_radius - crank->post_radius * cos(psi)));
}

AtAngle least_thrust_angle(const Case *c, const double pins[4]) {
  Crank crank = crank_of(c, pins);
  double dead[8];
  if (dead_centre_angles(&crank, dead) > 0) return (AtAngle){0, dead[0]};
  return lesser_end(&crank, angle_at_leaf_pin(&crank, crank.closed_angle),
                    angle_at_leaf_pin(&crank, crank.closed_angle + crank.angle_sign * crank.open_angle));
}
