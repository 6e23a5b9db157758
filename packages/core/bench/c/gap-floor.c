/* Port of src/clearance/travel-rates.ts and gap-floor.ts: a floor under the gap for turns near a pose. */
#include "model.h"

TravelRates travel_rates(const double pins[4], double rise, const LengthRange *range) {
  double rho = hypot(pins[0], pins[1]), g = hypot(pins[2], pins[3]), rise2 = rise * rise;
  double least2 = fmax(range->least * range->least - rise2, 1e-12);
  double greatest2 = fmax(range->greatest * range->greatest - rise2, least2);
  double least = sqrt(least2), slide = fmin(rho, g), slide_change = (rho * g + slide * slide) / least;
  double half = 0.5 * (g * g - rho * rho), e0 = half / least2, e1 = half / greatest2;
  double true_least = sqrt(least2 + rise2);
  TravelRates rates = {
      .slide = slide,
      .slide_change = slide_change,
      .turn_fixed = fmax(fabs(0.5 + e0), fabs(0.5 + e1)),
      .turn_leaf = fmax(fabs(e0 - 0.5), fabs(e1 - 0.5)),
      .turn_change = (2 * fabs(half) * slide) / (least * least2),
      .post_radius = rho,
      .rise_drift = (rise2 * slide) / (true_least * true_least * true_least),
      .rise_drift_change =
          rise2 * (slide_change / pow(true_least, 3) + (3 * slide * slide) / pow(true_least, 4)),
  };
  return rates;
}

typedef struct {
  double move_x, move_y, slide, turn, turn_ceiling, bend, carried, scale, drift_rate;
} Motion;

/* The contact's direction stands with the outline: each corner of the ram is followed. */
static double floor_by_ram_corners(const Pose *p, const Contact *contact, const TravelRates *r, const Motion *m,
                                   double half_turn) {
  const Section *section = contact->section;
  const Outline *o = contact->outline;
  double nx = contact->nx, ny = contact->ny, half_square = 0.5 * half_turn * half_turn;
  double support = -INFINITY, floor = INFINITY;
  for (int i = 0; i < o->count; i++) support = fmax(support, nx * o->x[i] + ny * o->y[i]);
  for (int k = 0; k < 4; k++) {
    bool far = k >= 2, on_rod_end = far && section->to_counts_from_leaf_pin;
    double raw = far ? section->to : section->from;
    double t = on_rod_end ? p->plan - raw * m->scale : raw * m->scale;
    double w = k % 2 == 0 ? -section->half_width : section->half_width;
    double station_rate = on_rod_end ? m->slide - raw * m->drift_rate : raw * m->drift_rate;
    double along_rate = station_rate - w * m->turn, across_rate = t * m->turn;
    double speed = nx * (m->move_x + along_rate * p->ux - across_rate * p->uy) +
                   ny * (m->move_y + along_rate * p->uy + across_rate * p->ux);
    double station_ceiling = (on_rod_end ? r->slide : 0) + fabs(raw) * r->rise_drift;
    double station_change = (on_rod_end ? r->slide_change : 0) + fabs(raw) * r->rise_drift_change;
    double reach = (on_rod_end ? r->post_radius + p->plan + r->slide * half_turn : fabs(t)) + fabs(w);
    double change = m->carried + reach * m->bend + 2 * m->turn_ceiling * station_ceiling + station_change;
    double height =
        nx * (p->ax + t * p->ux - w * p->uy) + ny * (p->ay + t * p->uy + w * p->ux) - support;
    floor = fmin(floor, height - fabs(speed) * half_turn - change * half_square);
  }
  return floor;
}

double gap_floor(const Pose *p, const Contact *contact, const TravelRates *r, bool in_leaf_frame, double half_turn) {
  const Section *section = contact->section;
  const Outline *o = contact->outline;
  double nx = contact->nx, ny = contact->ny;
  Motion m = {.move_x = in_leaf_frame ? p->ay : 0, .move_y = in_leaf_frame ? -p->ax : 0};
  double vx = in_leaf_frame ? -m.move_x : -p->by, vy = in_leaf_frame ? -m.move_y : p->bx;
  m.slide = p->ux * vx + p->uy * vy;
  m.turn = (p->ux * vy - p->uy * vx) / p->plan;
  m.turn_ceiling = in_leaf_frame ? r->turn_leaf : r->turn_fixed;
  m.bend = r->turn_change + m.turn_ceiling * m.turn_ceiling;
  m.carried = in_leaf_frame ? r->post_radius : 0;
  m.scale = p->plan / p->length;
  m.drift_rate = p->rise == 0 ? 0 : (p->rise * p->rise * m.slide) / (p->length * p->length * p->length);
  if (!contact->normal_on_ram) return floor_by_ram_corners(p, contact, r, &m, half_turn);

  double half_square = 0.5 * half_turn * half_turn, floor = INFINITY;
  double nu = nx * p->ux + ny * p->uy;
  bool is_end = fabs(nu) > 0.5, at_rod_end = is_end && nu < 0 && section->to_counts_from_leaf_pin;
  double end_raw = nu < 0 ? section->to : section->from;
  double end_rate = at_rod_end ? m.slide - end_raw * m.drift_rate : end_raw * m.drift_rate;
  double end_change = (at_rod_end ? r->slide_change : 0) + fabs(end_raw) * r->rise_drift_change;
  double end_at = at_rod_end ? p->plan - end_raw * m.scale : end_raw * m.scale;
  for (int i = 0; i < o->count; i++) {
    double dx = o->x[i] - p->ax, dy = o->y[i] - p->ay;
    double t = dx * p->ux + dy * p->uy, w = dy * p->ux - dx * p->uy;
    double change = sqrt(dx * dx + dy * dy) * m.bend + (2 * m.turn_ceiling + 1) * m.carried;
    double height, speed, extra = 0;
    if (is_end) {
      double sign = nu < 0 ? 1 : -1;
      height = sign * (t - end_at);
      speed = -(m.move_x * p->ux + m.move_y * p->uy) + m.turn * w - end_rate;
      extra = end_change;
    } else {
      double sign = nx * -p->uy + ny * p->ux < 0 ? 1 : -1;
      height = sign * w - section->half_width;
      speed = -(m.move_y * p->ux - m.move_x * p->uy) - m.turn * t;
    }
    floor = fmin(floor, height - fabs(speed) * half_turn - (change + extra) * half_square);
  }
  return floor;
}
