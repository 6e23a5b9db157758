/* Port of src/clearance/corner-gap.ts: the distance of one corner of ram or outline to the other body. */
#include "model.h"

static void ends(const Pose *p, const Section *section, double *t0, double *t1) {
  double scale = p->rise == 0 ? 1 : p->plan / p->length;
  *t0 = section->from * scale;
  *t1 = section->to_counts_from_leaf_pin ? p->plan - section->to * scale : section->to * scale;
}

static void note(Contact *contact, const Section *section, const Outline *outline, double gap, double nx, double ny,
                 double station, double lateral, bool on_rod_end) {
  *contact = (Contact){.gap = gap,
                       .nx = nx,
                       .ny = ny,
                       .station = station,
                       .lateral = lateral,
                       .on_rod_end = on_rod_end,
                       .feature = CORNERS,
                       .section = section,
                       .outline = outline};
}

void ram_corner_gap(const Pose *p, const Section *section, int corner, const Outline *o, Contact *contact) {
  double t0, t1;
  ends(p, section, &t0, &t1);
  contact->gap = INFINITY;
  if (t1 < t0) return;
  bool far = corner >= 2, on_rod_end = far && section->to_counts_from_leaf_pin;
  double station = far ? t1 : t0, lateral = corner % 2 == 1 ? section->half_width : -section->half_width;
  double kx = p->ax + station * p->ux - lateral * p->uy, ky = p->ay + station * p->uy + lateral * p->ux;
  double height = -INFINITY;
  int nearest = 0;
  for (int i = 0; i < o->count; i++) {
    double above = o->nx[i] * kx + o->ny[i] * ky - o->offset[i];
    if (above > height) height = above, nearest = i;
  }
  double mx = o->nx[nearest], my = o->ny[nearest];
  double foot = (ky - o->y[nearest]) * mx - (kx - o->x[nearest]) * my;
  double spare = fmin(foot, o->edge[nearest] - foot);
  if (height <= 0 || spare >= 0) {
    note(contact, section, o, height, mx, my, station, lateral, on_rod_end);
    contact->feature = height <= 0 ? OVERLAP : OUTLINE_EDGE;
    contact->spare = spare;
    return;
  }
  double square = INFINITY;
  for (int i = 0; i < o->count; i++) {
    double dx = kx - o->x[i], dy = ky - o->y[i];
    if (dx * dx + dy * dy < square) square = dx * dx + dy * dy, nearest = i;
  }
  double gap = sqrt(square);
  note(contact, section, o, gap, (kx - o->x[nearest]) / gap, (ky - o->y[nearest]) / gap, station, lateral,
       on_rod_end);
}

void outline_corner_gap(const Pose *p, const Section *section, int corner, const Outline *o, Contact *contact) {
  double t0, t1, ux = p->ux, uy = p->uy, h = section->half_width;
  ends(p, section, &t0, &t1);
  contact->gap = INFINITY;
  if (t1 < t0) return;
  double dx = o->x[corner] - p->ax, dy = o->y[corner] - p->ay;
  double t = dx * ux + dy * uy, w = dy * ux - dx * uy;
  double beyond = fmax(t0 - t, t - t1), beside = fabs(w) - h;
  double back = t - t1 > t0 - t ? -1 : 1, side = w > 0 ? -1 : 1;
  double lateral = fmin(fmax(w, -h), h), station = fmin(fmax(t, t0), t1);
  bool on_rod_end = section->to_counts_from_leaf_pin && back < 0;
  if (beyond > 0 && beside > 0) {
    double gap = hypot(beyond, beside), along_u = (back * beyond) / gap, along_m = (side * beside) / gap;
    note(contact, section, o, gap, along_u * ux - along_m * uy, along_u * uy + along_m * ux, station, lateral,
         on_rod_end);
    return;
  }
  if (beside >= beyond) {
    note(contact, section, o, beside, -side * uy, side * ux, t, -side * h, false);
    contact->feature = beside > 0 ? RAM_SIDE : OVERLAP;
    contact->spare = fmin(t - t0, t1 - t);
  } else {
    note(contact, section, o, beyond, back * ux, back * uy, back < 0 ? t1 : t0, w, on_rod_end);
    contact->feature = beyond > 0 ? RAM_END : OVERLAP;
    contact->spare = fmin(h - w, h + w);
  }
  contact->normal_on_ram = true;
}
