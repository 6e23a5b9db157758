/* Reads a case from standard input: whitespace-separated numbers in the order that ../c-case.ts writes them. */
#include "read-case.h"

#include <stdio.h>
#include <stdlib.h>

static double number(void) {
  double value;
  if (scanf("%lf", &value) != 1) {
    fprintf(stderr, "case: found something else, expected a number\n");
    exit(2);
  }
  return value;
}

static int count(int most) {
  double value = number();
  if (!(value >= 0 && value <= most)) {
    fprintf(stderr, "case: found a count of %g, expected 0 to %d\n", value, most);
    exit(2);
  }
  return (int)value;
}

static void read_section(Section *section) {
  section->from = number();
  section->to = number();
  section->half_width = number();
  section->to_counts_from_leaf_pin = number() != 0;
}

static void read_outline(Outline *o) {
  o->count = count(MAX_CORNERS);
  for (int i = 0; i < o->count; i++) {
    o->x[i] = number();
    o->y[i] = number();
    o->nx[i] = number();
    o->ny[i] = number();
    o->offset[i] = number();
    o->edge[i] = number();
  }
}

void read_case(Case *c) {
  c->turn_sign = number();
  c->open_angle = number();
  c->shortest = number();
  c->longest = number();
  c->retracted = number();
  c->need_lever = number();
  c->need_dead_centre = number();
  c->need_sweep = number();
  c->rise = number();
  c->rod_speed = number();
  c->leaf_length = number();
  for (int j = 0; j < 4; j++) c->low[j] = number();
  for (int j = 0; j < 4; j++) c->high[j] = number();
  c->sweeps = count(MAX_PARTS);
  for (int k = 0; k < c->sweeps; k++) c->sweep_gap[k] = number();
  c->check_limits = count(MAX_CHECKS);
  c->checks = count(MAX_CHECKS);
  for (int k = 0; k < c->checks; k++) {
    Check *check = &c->check[k];
    check->limit = count(MAX_CHECKS);
    check->role = (CheckRole)count(ROD);
    check->need = number();
    check->in_leaf_frame = number() != 0;
    check->sections = count(MAX_PARTS);
    for (int i = 0; i < check->sections; i++) read_section(&check->section[i]);
    check->outlines = count(MAX_PARTS);
    for (int i = 0; i < check->outlines; i++) read_outline(&check->outline[i]);
  }
}

int read_placements(double pins[][4], int most) {
  int n = count(most);
  for (int i = 0; i < n; i++) {
    for (int j = 0; j < 4; j++) pins[i][j] = number();
  }
  return n;
}
