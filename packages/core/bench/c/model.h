/* What the C port shares: the words of packages/core/src as plain structures. Metres and radians, frame of rule G1. */
#ifndef PINTLE_BENCH_MODEL_H
#define PINTLE_BENCH_MODEL_H

#include <math.h>
#include <stdbool.h>
#include <string.h>

enum { MAX_CORNERS = 16, MAX_PARTS = 8, MAX_CHECKS = 8, MAX_LIMITS = 16, MAX_FUNCTIONS = 28 };

typedef struct {
  int count;
  double x[MAX_CORNERS], y[MAX_CORNERS], nx[MAX_CORNERS], ny[MAX_CORNERS];
  double offset[MAX_CORNERS], edge[MAX_CORNERS];
} Outline;

typedef struct {
  double from, to, half_width;
  bool to_counts_from_leaf_pin;
} Section;

typedef enum { TUBE_TO_LEAF, TUBE_TO_FIXED, ROD } CheckRole;

/* `limit` numbers the limit that a check belongs to: two checks of one id share it. */
typedef struct {
  int limit;
  CheckRole role;
  double need;
  bool in_leaf_frame;
  int sections, outlines;
  Section section[MAX_PARTS];
  Outline outline[MAX_PARTS];
} Check;

typedef struct {
  double turn_sign, open_angle;
  double shortest, longest, retracted;
  double need_lever, need_dead_centre, need_sweep;
  double rise, rod_speed, leaf_length;
  int checks, check_limits, sweeps;
  Check check[MAX_CHECKS];
  double sweep_gap[MAX_PARTS];
  double low[4], high[4];
} Case;

typedef struct {
  double post_radius, leaf_radius, closed_angle, angle_sign, rise, open_angle;
} Crank;

typedef struct {
  double value, at_angle;
} AtAngle;

typedef struct {
  double closed, open, least, least_at, greatest, greatest_at;
  bool monotonic;
} LengthRange;

Crank crank_of(const Case *c, const double pins[4]);
LengthRange length_range(const Case *c, const double pins[4]);
double true_length(const Crank *crank, double psi);
double lever_at_psi(const Crank *crank, double psi);
AtAngle least_lever(const Case *c, const double pins[4]);
AtAngle least_thrust_angle(const Case *c, const double pins[4]);

typedef struct {
  double ax, ay, bx, by, ux, uy, plan, length, rise;
} Pose;

typedef enum { OUTLINE_EDGE, RAM_SIDE, RAM_END, CORNERS, OVERLAP } Feature;

typedef struct {
  double gap, nx, ny, station, lateral, spare;
  bool on_rod_end, normal_on_ram;
  Feature feature;
  const Section *section;
  const Outline *outline;
} Contact;

void set_pose(Pose *pose, const double pins[4], double rise, bool in_leaf_frame, double cos_phi, double sin_phi);
void nearer_gap(const Pose *pose, const Section *section, const Outline *outline, Contact *contact);
void ram_corner_gap(const Pose *pose, const Section *section, int corner, const Outline *outline, Contact *contact);
void outline_corner_gap(const Pose *pose, const Section *section, int corner, const Outline *outline,
                        Contact *contact);
void nearest_contact(const Pose *pose, const Check *check, Contact *contact);

typedef struct {
  double slide, slide_change, turn_fixed, turn_leaf, turn_change, post_radius, rise_drift, rise_drift_change;
} TravelRates;

TravelRates travel_rates(const double pins[4], double rise, const LengthRange *range);
double gap_floor(const Pose *pose, const Contact *contact, const TravelRates *rates, bool in_leaf_frame,
                 double half_turn);

typedef struct {
  double gap, at_angle, x, y;
} LeastGap;

LeastGap least_gap(const Case *c, const Check *check, const double pins[4], const TravelRates *rates);
void pose_at(Pose *pose, const Case *c, const double pins[4], double theta, bool in_leaf_frame);

typedef struct {
  bool in_metres, fails;
  double value, limit, slack, at_angle, x, y;
} Limit;

int limits_of(const Case *c, const double pins[4], Limit *limits);

/*
 * One limit as a smooth function of the pins and the turn; keeps its own last contact. A clearance speaks of one
 * section and one outline: of the whole pair, or of a single corner of the ram or of the outline.
 */
typedef enum { STROKE, LEVER, DEAD_CENTRE, PAIR, RAM_CORNER, OUTLINE_CORNER } SlackKind;

typedef struct SlackFunction {
  SlackKind kind;
  double rise, length, sign, factor, orientation, scale, last, need;
  bool in_leaf_frame;
  int corner, corners;
  const Section *section;
  const Outline *outline;
  struct SlackFunction *corner_functions;
  Pose pose;
  Contact contact;
} SlackFunction;

typedef struct {
  double post, leaf, both;
} PinMoves;

double evaluate_slack(SlackFunction *f, const double pins[4], double c, double s, double slope[5]);
double slack_excess(SlackFunction *f, const PinMoves *moves, double slope[5]);
static inline bool ends_only(const SlackFunction *f) { return f->kind < PAIR; }
static inline bool bites_at_corners(const SlackFunction *f) {
  return f->kind == LEVER || f->kind == DEAD_CENTRE || (f->kind == STROKE && f->sign < 0);
}
int slack_functions(const Case *c, double orientation, SlackFunction *functions);
int corner_functions(SlackFunction *pair, SlackFunction *corners);
double orientation_of(const double pins[4]);
double gap_ceiling_excess(const Pose *pose, const Contact *contact, const PinMoves *moves);
void gap_slope(const Pose *pose, const Contact *contact, bool in_leaf_frame, double c, double s, double slope[5]);

double worst_slack(SlackFunction *f, const double pins[4], double reach, double c, double s, double error[4],
                   double worst_slope[5]);
double reserve_at_turn(SlackFunction *f, const double pins[4], double ceiling, double c, double s, double error[4],
                       double worst_slope[5]);

typedef struct {
  bool feasible;
  double reserve;
} Reserve;

Reserve reserve_of(const Case *c, const double pins[4]);

enum { SWING_ANGLES = 91 };

typedef struct {
  double theta[SWING_ANGLES], pin_to_pin[SWING_ANGLES], lever[SWING_ANGLES];
  double leaf_gap[SWING_ANGLES], fixed_gap[SWING_ANGLES], toe_speed[SWING_ANGLES];
} SwingSeries;

void swing_series(const Case *c, const double pins[4], SwingSeries *series);

#endif
