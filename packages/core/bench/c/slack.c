/* Port of src/placement/slack-functions.ts and clearance-slack.ts: each limit as a smooth function of the pins and the turn, with its slope. */
#include "model.h"

static void chain_leaf_pin(double slope[5], double x, double y, double bx, double by, double c, double s) {
  slope[2] = x * c + y * s;
  slope[3] = y * c - x * s;
  slope[4] = y * bx - x * by;
}

static double stroke_slack(SlackFunction *f, const double pins[4], double c, double s, double slope[5]) {
  double px = pins[0], py = pins[1], d = pins[2], e = pins[3];
  double bx = d * c - e * s, by = d * s + e * c, qx = bx - px, qy = by - py;
  f->last = sqrt(qx * qx + qy * qy);
  double true3 = sqrt(qx * qx + qy * qy + f->rise * f->rise);
  double x = (f->sign * qx) / true3, y = (f->sign * qy) / true3;
  slope[0] = -x;
  slope[1] = -y;
  chain_leaf_pin(slope, x, y, bx, by, c, s);
  return f->sign * (true3 - f->length);
}

static double arm_slack(const SlackFunction *f, const double pins[4], double c, double s, double slope[5]) {
  bool is_lever = f->kind == LEVER;
  double px = pins[0], py = pins[1], d = pins[2], e = pins[3];
  double bx = d * c - e * s, by = d * s + e * c, qx = bx - px, qy = by - py;
  double length = sqrt(qx * qx + qy * qy + (is_lever ? f->rise * f->rise : 0));
  double radius = is_lever ? 1 : sqrt(bx * bx + by * by);
  double pull = (f->factor * radius) / length, scale = f->scale, k = scale * f->orientation;
  slope[0] = k * by + scale * pull * qx;
  slope[1] = -k * bx + scale * pull * qy;
  double x = -k * py - scale * pull * qx, y = k * px - scale * pull * qy;
  if (!is_lever) {
    x -= (scale * f->factor * length * bx) / radius;
    y -= (scale * f->factor * length * by) / radius;
  }
  chain_leaf_pin(slope, x, y, bx, by, c, s);
  return scale * (f->orientation * (px * by - py * bx) - f->factor * radius * length);
}

static double clearance_slack(SlackFunction *f, const double pins[4], double c, double s, double slope[5]) {
  set_pose(&f->pose, pins, f->rise, f->in_leaf_frame, c, s);
  if (f->kind == RAM_CORNER) {
    ram_corner_gap(&f->pose, f->section, f->corner, f->outline, &f->contact);
  } else if (f->kind == OUTLINE_CORNER) {
    outline_corner_gap(&f->pose, f->section, f->corner, f->outline, &f->contact);
  } else {
    f->contact.gap = INFINITY;
    nearer_gap(&f->pose, f->section, f->outline, &f->contact);
  }
  if (f->contact.gap == INFINITY) {
    memset(slope, 0, 5 * sizeof(double));
    return INFINITY;
  }
  gap_slope(&f->pose, &f->contact, f->in_leaf_frame, c, s, slope);
  return f->contact.gap - f->need;
}

double evaluate_slack(SlackFunction *f, const double pins[4], double c, double s, double slope[5]) {
  if (f->kind >= PAIR) return clearance_slack(f, pins, c, s, slope);
  return f->kind == STROKE ? stroke_slack(f, pins, c, s, slope) : arm_slack(f, pins, c, s, slope);
}

double slack_excess(SlackFunction *f, const PinMoves *moves, double slope[5]) {
  switch (f->kind) {
    case STROKE:
      if (f->sign < 0) return 0;
      return f->last > moves->both ? (moves->both * moves->both) / (2 * (f->last - moves->both)) : INFINITY;
    case PAIR:
    case RAM_CORNER:
    case OUTLINE_CORNER:
      if (f->contact.feature == OVERLAP) memset(slope, 0, 5 * sizeof(double));
      return gap_ceiling_excess(&f->pose, &f->contact, moves);
    default:
      return f->scale *
             (moves->post * moves->leaf + (f->kind == LEVER ? 0 : f->factor * moves->leaf * moves->both));
  }
}

double orientation_of(const double pins[4]) { return pins[0] * pins[3] - pins[1] * pins[2] >= 0 ? 1 : -1; }

int slack_functions(const Case *c, double orientation, SlackFunction *f) {
  double scale = 1 / fmax(c->retracted, 1e-6);
  int n = 0;
  f[n++] = (SlackFunction){.kind = STROKE, .rise = c->rise, .length = c->shortest, .sign = 1};
  f[n++] = (SlackFunction){.kind = STROKE, .rise = c->rise, .length = c->longest, .sign = -1};
  f[n++] = (SlackFunction){
      .kind = LEVER, .rise = c->rise, .factor = c->need_lever, .orientation = orientation, .scale = scale};
  f[n++] = (SlackFunction){.kind = DEAD_CENTRE,
                           .rise = c->rise,
                           .factor = sin(c->need_dead_centre),
                           .orientation = orientation,
                           .scale = scale};
  for (int k = 0; k < c->checks; k++) {
    const Check *check = &c->check[k];
    for (int i = 0; i < check->sections; i++) {
      for (int o = 0; o < check->outlines; o++) {
        f[n++] = (SlackFunction){.kind = PAIR,
                                 .rise = c->rise,
                                 .need = check->need,
                                 .in_leaf_frame = check->in_leaf_frame,
                                 .section = &check->section[i],
                                 .outline = &check->outline[o]};
      }
    }
  }
  return n;
}

/* The same limit corner by corner, four of the ram and then the outline's; says how many. */
int corner_functions(SlackFunction *pair, SlackFunction *corners) {
  pair->corner_functions = corners;
  pair->corners = 4 + pair->outline->count;
  for (int i = 0; i < pair->corners; i++) {
    corners[i] = *pair;
    corners[i].kind = i < 4 ? RAM_CORNER : OUTLINE_CORNER;
    corners[i].corner = i < 4 ? i : i - 4;
    corners[i].corners = 0;
  }
  return pair->corners;
}
