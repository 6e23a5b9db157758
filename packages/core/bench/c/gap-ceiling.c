/* Port of src/search/gap-ceiling.ts: how much a gap may exceed its own tangent when the pins move. */
#include "model.h"

typedef struct {
  double post, leaf, shortest, turn, bend, stretch, stretch_bend;
} RamMoves;

static RamMoves ram_moves(const Pose *p, const PinMoves *moves, double shortest) {
  double both = moves->both, rise2 = p->rise * p->rise, cube = pow(hypot(shortest, p->rise), 3);
  return (RamMoves){
      .post = moves->post,
      .leaf = moves->leaf,
      .shortest = shortest,
      .turn = both / shortest,
      .bend = (0.6 * both * both) / (shortest * shortest),
      .stretch = (both * rise2) / cube,
      .stretch_bend = (1.5 * both * both * rise2) / (cube * shortest),
  };
}

static double point_move(const RamMoves *ram, double station, double lateral, bool from_leaf_pin) {
  double own = from_leaf_pin ? ram->leaf : ram->post, other = from_leaf_pin ? ram->post : ram->leaf;
  double share = station / ram->shortest;
  return own * fmax(1, fabs(1 - share)) + fabs(share) * other + fabs(lateral) * ram->turn;
}

static double greatest_move(const Section *section, const RamMoves *ram) {
  double near = point_move(ram, section->from, section->half_width, false);
  return fmax(near, point_move(ram, section->to, section->half_width, section->to_counts_from_leaf_pin));
}

static double least_length(const Section *section, const Pose *p, const RamMoves *ram) {
  double scale = ram->shortest / hypot(ram->shortest, p->rise);
  if (!section->to_counts_from_leaf_pin) return (section->to - section->from) * scale;
  return fmax(0, ram->shortest - section->from - section->to);
}

static double depth_under_foot(const Pose *p, const Contact *contact, double room) {
  double nx = contact->nx, ny = contact->ny, station = contact->station, lateral = contact->lateral;
  const Outline *o = contact->outline;
  double foot_x = p->ax + station * p->ux - lateral * p->uy - nx * contact->gap;
  double foot_y = p->ay + station * p->uy + lateral * p->ux - ny * contact->gap;
  double depth = INFINITY;
  for (int i = 0; i < o->count; i++) {
    double mx = o->nx[i], my = o->ny[i], facing = -(mx * nx + my * ny);
    if (facing <= 1e-9) continue;
    double beside = fabs(my * nx - mx * ny) * room;
    depth = fmin(depth, (o->offset[i] - mx * foot_x - my * foot_y - beside) / facing);
  }
  return fmax(0, depth);
}

static double overhang(double height, double slide, double spare, double depth) {
  double room = fmax(0, spare);
  double to_foot = slide <= 2 * height ? (slide * slide) / (2 * height) : 2 * (slide - height);
  double through = slide > height + depth ? 2 * (slide - height) - depth : 0, beside = 0;
  if (slide > room) {
    double beyond = slide - room, left = height - sqrt(slide * slide - room * room);
    beside = left > 0 ? fmin(beyond, (beyond * beyond) / (2 * left)) : beyond - 2 * left;
  }
  return fmin(to_foot, fmax(beside, through));
}

double gap_ceiling_excess(const Pose *p, const Contact *contact, const PinMoves *moves) {
  const Section *section = contact->section;
  double gap = contact->gap, shortest = p->plan - moves->both;
  if (shortest <= 0) return INFINITY;
  bool rod = section->to_counts_from_leaf_pin;
  if (rod && p->length - section->from - section->to <= moves->both) return INFINITY;
  RamMoves ram = ram_moves(p, moves, shortest);
  double from_leaf_pin = p->plan - contact->station;
  double station = contact->on_rod_end ? from_leaf_pin : contact->station;
  switch (contact->feature) {
    case OUTLINE_EDGE:
    case CORNERS: {
      double slide = point_move(&ram, station, contact->lateral, contact->on_rod_end);
      double bent = (fabs(station) + fabs(contact->lateral)) * ram.bend;
      if (contact->feature == CORNERS) return bent + overhang(gap, slide, 0, 0);
      double depth = slide > gap ? depth_under_foot(p, contact, fmin(contact->spare, slide)) : 0;
      return bent + overhang(gap, slide, contact->spare, depth);
    }
    case RAM_SIDE: {
      double to_post = fabs(contact->station) + section->half_width + gap;
      double to_leaf = fabs(from_leaf_pin) + section->half_width + gap;
      double bent = fmin(to_post * ram.bend + ram.post * ram.turn, to_leaf * ram.bend + ram.leaf * ram.turn);
      double ends = fmax(fabs(section->from), fabs(section->to)) * ram.stretch;
      double slide = ram.post + to_post * ram.turn, slide_of_far_end = rod ? ram.leaf + to_leaf * ram.turn : 0;
      return bent + overhang(gap, fmax(slide, slide_of_far_end) + ends, contact->spare, 2 * section->half_width);
    }
    case RAM_END: {
      double anchor = contact->on_rod_end ? ram.leaf : ram.post, raw = (fabs(station) * p->length) / p->plan;
      double away = fabs(station) + fabs(contact->lateral) + gap;
      double bent = away * ram.bend + anchor * ram.turn + raw * ram.stretch_bend;
      double slide = anchor + away * ram.turn + raw * ram.stretch;
      return bent + overhang(gap, slide, contact->spare, least_length(section, p, &ram));
    }
    default:
      return greatest_move(section, &ram);
  }
}
