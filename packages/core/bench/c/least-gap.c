/* Port of src/clearance/least-gap.ts: the least gap of a check over the whole travel, bracketed to 1 µm. */
#include "model.h"

#define GAP_TOLERANCE 1e-6

void pose_at(Pose *pose, const Case *c, const double pins[4], double theta, bool in_leaf_frame) {
  double phi = c->turn_sign * theta;
  set_pose(pose, pins, c->rise, in_leaf_frame, cos(phi), sin(phi));
}

/* A rod that is not out at all has no gap; how soon it comes out is bounded by the sliding rate. */
static double floor_under(const Pose *pose, const Contact *contact, const TravelRates *rates, const Check *check,
                          const Section *section, double width) {
  if (contact->gap == INFINITY) {
    double shown = pose->length - section->to - section->from + rates->slide * width;
    return shown < 0 || width < 1e-7 ? INFINITY : -INFINITY;
  }
  return gap_floor(pose, contact, rates, check->in_leaf_frame, width);
}

LeastGap least_gap(const Case *c, const Check *check, const double pins[4], const TravelRates *rates) {
  double stack_theta[256], stack_half[256];
  Pose pose;
  Contact contact;
  double best = INFINITY, best_theta = 0;
  for (int end = 0; end < 2; end++) {
    double theta = end == 0 ? 0 : c->open_angle;
    pose_at(&pose, c, pins, theta, check->in_leaf_frame);
    nearest_contact(&pose, check, &contact);
    if (contact.gap < best) best = contact.gap, best_theta = theta;
  }
  int pieces = (int)fmax(1, ceil(c->open_angle / 0.6));
  double half = c->open_angle / pieces / 2;
  for (int s = 0; s < check->sections; s++) {
    for (int o = 0; o < check->outlines; o++) {
      const Section *section = &check->section[s];
      int depth = 0;
      for (int i = 0; i < pieces; i++) {
        stack_theta[depth] = (2 * i + 1) * half;
        stack_half[depth++] = half;
        while (depth > 0) {
          double theta = stack_theta[--depth], width = stack_half[depth];
          pose_at(&pose, c, pins, theta, check->in_leaf_frame);
          contact.gap = INFINITY;
          nearer_gap(&pose, section, &check->outline[o], &contact);
          if (contact.gap < best) best = contact.gap, best_theta = theta;
          if (floor_under(&pose, &contact, rates, check, section, width) >= best - GAP_TOLERANCE) continue;
          stack_theta[depth] = theta - width / 2;
          stack_half[depth++] = width / 2;
          stack_theta[depth] = theta + width / 2;
          stack_half[depth++] = width / 2;
        }
      }
    }
  }
  LeastGap least = {best, best_theta, 0, 0};
  if (best == INFINITY) return least;
  pose_at(&pose, c, pins, best_theta, check->in_leaf_frame);
  nearest_contact(&pose, check, &contact);
  double x = pose.ax + contact.station * pose.ux - contact.lateral * pose.uy;
  double y = pose.ay + contact.station * pose.uy + contact.lateral * pose.ux;
  double phi = check->in_leaf_frame ? c->turn_sign * best_theta : 0;
  least.x = x * cos(phi) - y * sin(phi);
  least.y = x * sin(phi) + y * cos(phi);
  return least;
}
