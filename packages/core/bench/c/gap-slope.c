/* Port of src/clearance/gap-slope.ts: how a gap changes with the pins and the turn. */
#include "model.h"

void gap_slope(const Pose *p, const Contact *contact, bool in_leaf_frame, double c, double s, double slope[5]) {
  double ax = p->ax, ay = p->ay, bx = p->bx, by = p->by, ux = p->ux, uy = p->uy, plan = p->plan, length = p->length;
  double nx = contact->nx, ny = contact->ny, scale = plan / length;
  double raw = (contact->on_rod_end ? plan - contact->station : contact->station) / scale;
  double nu = nx * ux + ny * uy, shared = (nu * plan * plan) / (length * length * length);
  double turn = (contact->lateral * nu) / plan;
  double first_x, first_y;
  double a_x, a_y, b_x, b_y;
  if (contact->on_rod_end) {
    first_x = raw * (nx / length - shared * ux) - turn * uy;
    first_y = raw * (ny / length - shared * uy) + turn * ux;
    a_x = first_x;
    a_y = first_y;
    b_x = nx - a_x;
    b_y = ny - a_y;
  } else {
    first_x = raw * (nx / length - shared * ux) + turn * uy;
    first_y = raw * (ny / length - shared * uy) - turn * ux;
    b_x = first_x;
    b_y = first_y;
    a_x = nx - b_x;
    a_y = ny - b_y;
  }
  if (in_leaf_frame) {
    slope[0] = a_x * c - a_y * s;
    slope[1] = a_x * s + a_y * c;
    slope[2] = b_x;
    slope[3] = b_y;
    slope[4] = a_x * ay - a_y * ax;
  } else {
    slope[0] = a_x;
    slope[1] = a_y;
    slope[2] = b_x * c + b_y * s;
    slope[3] = b_y * c - b_x * s;
    slope[4] = b_y * bx - b_x * by;
  }
}
