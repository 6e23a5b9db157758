/* Port of src/swing/swing-series.ts: lengths, lever arm, clearances and toe speed over the travel. */
#include "model.h"

static double nearest(const Case *c, const double pins[4], double cos_phi, double sin_phi, CheckRole role) {
  Pose pose;
  Contact contact;
  double least = INFINITY;
  for (int k = 0; k < c->checks; k++) {
    const Check *check = &c->check[k];
    if (check->role != role) continue;
    set_pose(&pose, pins, c->rise, check->in_leaf_frame, cos_phi, sin_phi);
    nearest_contact(&pose, check, &contact);
    if (contact.gap < least) least = contact.gap;
  }
  return least == INFINITY ? NAN : least;
}

void swing_series(const Case *c, const double pins[4], SwingSeries *series) {
  Crank crank = crank_of(c, pins);
  double step = c->open_angle / (SWING_ANGLES - 1);
  for (int i = 0; i < SWING_ANGLES; i++) {
    double theta = i == SWING_ANGLES - 1 ? c->open_angle : i * step;
    double psi = crank.closed_angle + crank.angle_sign * theta, lever = lever_at_psi(&crank, psi);
    double cos_phi = cos(c->turn_sign * theta), sin_phi = sin(c->turn_sign * theta);
    series->theta[i] = theta;
    series->lever[i] = lever;
    series->pin_to_pin[i] = true_length(&crank, psi);
    series->leaf_gap[i] = nearest(c, pins, cos_phi, sin_phi, TUBE_TO_LEAF);
    series->fixed_gap[i] = nearest(c, pins, cos_phi, sin_phi, TUBE_TO_FIXED);
    series->toe_speed[i] = lever == 0 ? NAN : (c->rod_speed / lever) * c->leaf_length;
  }
}
