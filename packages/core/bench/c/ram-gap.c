/* Port of src/clearance/ram-pose.ts and ram-gap.ts: the nearest pair of one ram section and one convex outline. */
#include "model.h"

void set_pose(Pose *pose, const double pins[4], double rise, bool in_leaf_frame, double c, double s) {
  double px = pins[0], py = pins[1], d = pins[2], e = pins[3];
  pose->ax = in_leaf_frame ? px * c + py * s : px;
  pose->ay = in_leaf_frame ? py * c - px * s : py;
  pose->bx = in_leaf_frame ? d : d * c - e * s;
  pose->by = in_leaf_frame ? e : d * s + e * c;
  double vx = pose->bx - pose->ax, vy = pose->by - pose->ay;
  double plan = sqrt(vx * vx + vy * vy);
  pose->plan = plan;
  pose->rise = rise;
  pose->length = rise == 0 ? plan : sqrt(plan * plan + rise * rise);
  pose->ux = plan > 0 ? vx / plan : 1;
  pose->uy = plan > 0 ? vy / plan : 0;
}

typedef struct {
  double t0, t1, h;
  double station[MAX_CORNERS], lateral[MAX_CORNERS];
} InRamAxes;

static void settle(Contact *contact, double gap, double station, double lateral, const InRamAxes *ram,
                   const Section *section, const Outline *outline) {
  contact->gap = gap;
  contact->station = station;
  contact->lateral = lateral;
  contact->on_rod_end = section->to_counts_from_leaf_pin && station > 0.5 * (ram->t0 + ram->t1);
  contact->section = section;
  contact->outline = outline;
}

/* The general case of two parted convex shapes, reached when the quick foot falls beside its edge. */
static void nearest_corners(const Pose *p, const Outline *o, const InRamAxes *ram, Contact *contact,
                            const Section *section) {
  double best = contact->gap, dir_t = 0, dir_w = 0, station = 0, lateral = 0;
  bool found = false;
  for (int i = 0; i < o->count; i++) {
    double t = ram->station[i], w = ram->lateral[i];
    double near_t = fmin(fmax(t, ram->t0), ram->t1), near_w = fmin(fmax(w, -ram->h), ram->h);
    double gap = sqrt((t - near_t) * (t - near_t) + (w - near_w) * (w - near_w));
    if (gap < best && gap > 0) {
      best = gap;
      dir_t = (near_t - t) / gap;
      dir_w = (near_w - w) / gap;
      station = near_t;
      lateral = near_w;
      found = true;
    }
  }
  for (int k = 0; k < 4; k++) {
    double t = k < 2 ? ram->t0 : ram->t1, w = k % 2 == 0 ? -ram->h : ram->h;
    double kx = p->ax + t * p->ux - w * p->uy, ky = p->ay + t * p->uy + w * p->ux;
    for (int i = 0; i < o->count; i++) {
      double mx = o->nx[i], my = o->ny[i], gap = mx * kx + my * ky - o->offset[i];
      if (gap <= 0 || gap >= best) continue;
      double foot = (ky - o->y[i]) * mx - (kx - o->x[i]) * my;
      if (foot < 0 || foot > o->edge[i]) continue;
      best = gap;
      dir_t = mx * p->ux + my * p->uy;
      dir_w = my * p->ux - mx * p->uy;
      station = t;
      lateral = w;
      found = true;
    }
  }
  if (!found) return;
  contact->nx = dir_t * p->ux - dir_w * p->uy;
  contact->ny = dir_t * p->uy + dir_w * p->ux;
  contact->feature = CORNERS;
  contact->normal_on_ram = false;
  contact->spare = 0;
  settle(contact, best, station, lateral, ram, section, o);
}

void nearer_gap(const Pose *p, const Section *section, const Outline *o, Contact *contact) {
  double ax = p->ax, ay = p->ay, ux = p->ux, uy = p->uy;
  double scale = p->rise == 0 ? 1 : p->plan / p->length;
  InRamAxes ram = {.t0 = section->from * scale, .h = section->half_width};
  ram.t1 = section->to_counts_from_leaf_pin ? p->plan - section->to * scale : section->to * scale;
  if (ram.t1 < ram.t0) return;
  double t0 = ram.t0, t1 = ram.t1, h = ram.h;
  double min_t = INFINITY, max_t = -INFINITY, min_w = INFINITY, max_w = -INFINITY;
  int at_min_t = 0, at_max_t = 0, at_min_w = 0, at_max_w = 0;
  for (int i = 0; i < o->count; i++) {
    double dx = o->x[i] - ax, dy = o->y[i] - ay;
    double t = dx * ux + dy * uy, w = dy * ux - dx * uy;
    ram.station[i] = t;
    ram.lateral[i] = w;
    if (t < min_t) min_t = t, at_min_t = i;
    if (t > max_t) max_t = t, at_max_t = i;
    if (w < min_w) min_w = w, at_min_w = i;
    if (w > max_w) max_w = w, at_max_w = i;
  }
  double best = min_w - h;
  int kind = 0, corner = at_min_w;
  if (-h - max_w > best) best = -h - max_w, kind = 1, corner = at_max_w;
  if (min_t - t1 > best) best = min_t - t1, kind = 2, corner = at_min_t;
  if (t0 - max_t > best) best = t0 - max_t, kind = 3, corner = at_max_t;
  if (best >= contact->gap) return;
  double cx = ax + ux * 0.5 * (t0 + t1), cy = ay + uy * 0.5 * (t0 + t1), half = 0.5 * (t1 - t0);
  for (int i = 0; i < o->count; i++) {
    double mx = o->nx[i], my = o->ny[i], along = mx * ux + my * uy, across = my * ux - mx * uy;
    double gap = mx * cx + my * cy - o->offset[i] - fabs(along) * half - fabs(across) * h;
    if (gap > best) best = gap, kind = 4, corner = i;
  }
  if (best >= contact->gap) return;

  double station, lateral, spare, normal_x, normal_y;
  Feature feature;
  if (kind == 4) {
    double mx = o->nx[corner], my = o->ny[corner];
    station = mx * ux + my * uy > 0 ? t0 : t1;
    lateral = my * ux - mx * uy > 0 ? -h : h;
    double kx = ax + station * ux - lateral * uy - o->x[corner];
    double ky = ay + station * uy + lateral * ux - o->y[corner];
    double foot = ky * mx - kx * my;
    spare = fmin(foot, o->edge[corner] - foot);
    normal_x = mx;
    normal_y = my;
    feature = OUTLINE_EDGE;
  } else if (kind < 2) {
    double side = kind == 0 ? -1 : 1;
    station = ram.station[corner];
    lateral = -side * h;
    spare = fmin(station - t0, t1 - station);
    normal_x = -side * uy;
    normal_y = side * ux;
    feature = RAM_SIDE;
  } else {
    double end = kind == 2 ? -1 : 1;
    station = kind == 2 ? t1 : t0;
    lateral = ram.lateral[corner];
    spare = fmin(lateral + h, h - lateral);
    normal_x = end * ux;
    normal_y = end * uy;
    feature = RAM_END;
  }
  if (best > 0 && spare < 0) {
    nearest_corners(p, o, &ram, contact, section);
    return;
  }
  contact->nx = normal_x;
  contact->ny = normal_y;
  contact->feature = best <= 0 ? OVERLAP : feature;
  contact->normal_on_ram = kind < 4;
  contact->spare = spare;
  settle(contact, best, station, lateral, &ram, section, o);
}

void nearest_contact(const Pose *pose, const Check *check, Contact *contact) {
  contact->gap = INFINITY;
  for (int s = 0; s < check->sections; s++) {
    for (int o = 0; o < check->outlines; o++) nearer_gap(pose, &check->section[s], &check->outline[o], contact);
  }
}
