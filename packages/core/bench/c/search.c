/* Port of src/search/best-placement.ts and node-heap.ts: branch and bound over boxes of placements. */
#include "search.h"

#include <stdlib.h>

typedef struct {
  Cell cell;
  double side, ceiling;
  long order;
} Node;

typedef struct {
  Node *nodes;
  int size, room;
  long pushed;
} Heap;

static bool before(const Node *a, const Node *b) {
  return a->ceiling == b->ceiling ? a->order < b->order : a->ceiling > b->ceiling;
}

static void push(Heap *heap, const Cell *cell, double side, double ceiling) {
  if (heap->size == heap->room) {
    heap->room = heap->room == 0 ? 64 : 2 * heap->room;
    heap->nodes = realloc(heap->nodes, (size_t)heap->room * sizeof(Node));
    if (heap->nodes == NULL) abort();
  }
  Node node = {*cell, side, ceiling, heap->pushed++};
  int i = heap->size++;
  for (; i > 0 && before(&node, &heap->nodes[(i - 1) / 2]); i = (i - 1) / 2) heap->nodes[i] = heap->nodes[(i - 1) / 2];
  heap->nodes[i] = node;
}

static bool pop(Heap *heap, Node *top) {
  if (heap->size == 0) return false;
  *top = heap->nodes[0];
  Node last = heap->nodes[--heap->size];
  int i = 0;
  for (;;) {
    int child = 2 * i + 1;
    if (child >= heap->size) break;
    if (child + 1 < heap->size && before(&heap->nodes[child + 1], &heap->nodes[child])) child++;
    if (!before(&heap->nodes[child], &last)) break;
    heap->nodes[i] = heap->nodes[child];
    i = child;
  }
  if (heap->size > 0) heap->nodes[i] = last;
  return true;
}

static void product_range(const Cell *cell, int a, int b, double *low, double *high) {
  double p = cell->low[a] * cell->low[b], q = cell->low[a] * cell->high[b];
  double r = cell->high[a] * cell->low[b], t = cell->high[a] * cell->high[b];
  *low = fmin(fmin(p, q), fmin(r, t));
  *high = fmax(fmax(p, q), fmax(r, t));
}

static bool side_is_possible(const Cell *cell, double side) {
  double first_low, first_high, second_low, second_high;
  product_range(cell, 0, 3, &first_low, &first_high);
  product_range(cell, 1, 2, &second_low, &second_high);
  return side == 1 ? first_high - second_low >= 0 : first_low - second_high < 0;
}

static bool looks_better(Search *s, const double pins[4], double target) {
  static const double nowhere[4] = {0};
  Rows rows;
  limit_rows(s, functions_for(s, orientation_of(pins)), pins, nowhere, target, &rows, true);
  for (int i = 0; i < rows.count; i++) {
    if (rows.b[i] < -1e-4 * rows.w[i]) return false;
  }
  return true;
}

static void climb_from(Search *s, const Cell *cell, const double start[4], Found *best) {
  double pins[4];
  Score score = climb(s, cell, start, pins);
  if (!score.feasible || (best->found && score.value <= best->reserve)) return;
  best->found = true;
  best->reserve = score.value;
  memcpy(best->pins, pins, sizeof pins);
}

static void push_halves(Heap *heap, const Node *node, int j, double ceiling) {
  Cell lower = node->cell, upper = node->cell;
  lower.high[j] = upper.low[j] = 0.5 * (node->cell.low[j] + node->cell.high[j]);
  push(heap, &lower, node->side, ceiling);
  push(heap, &upper, node->side, ceiling);
}

Found best_placement(const Case *c, double tolerance) {
  Search s = {.c = c};
  for (int i = 0; i < TURN_SAMPLES; i++) {
    double phi = (c->turn_sign * c->open_angle * i) / (TURN_SAMPLES - 1);
    s.phi[i] = phi;
    s.cos[i] = cos(phi);
    s.sin[i] = sin(phi);
  }
  s.functions = slack_functions(c, 1, s.left);
  slack_functions(c, -1, s.right);
  Found best = {.found = false};
  Heap heap = {NULL, 0, 0, 0};
  Cell whole;
  double centre[4], half[4], move[4];
  for (int j = 0; j < 4; j++) {
    whole.low[j] = c->low[j];
    whole.high[j] = c->high[j];
    centre[j] = 0.5 * (c->low[j] + c->high[j]);
  }
  climb_from(&s, &whole, centre, &best);
  int climbs = 1;
  push(&heap, &whole, 1, INFINITY);
  push(&heap, &whole, -1, INFINITY);
  Node node;
  Rows rows;
  while (pop(&heap, &node)) {
    best.boxes++;
    const Cell *cell = &node.cell;
    double target = best.found ? best.reserve + tolerance : 0, longest = -1;
    int at = 0;
    for (int j = 0; j < 4; j++) {
      centre[j] = 0.5 * (cell->low[j] + cell->high[j]);
      half[j] = 0.5 * (cell->high[j] - cell->low[j]);
      double side = cell->high[j] - cell->low[j];
      if (side > longest) longest = side, at = j;
    }
    if (!side_is_possible(cell, node.side)) continue;
    if (!limit_rows(&s, functions_for(&s, node.side), centre, half, target, &rows, false)) continue;
    double slack = greatest_slack(&rows, half, move);
    if (slack < 0) continue;
    for (int j = 0; j < 4; j++) centre[j] = fmin(fmax(centre[j] + move[j], cell->low[j]), cell->high[j]);
    bool may_climb = climbs < 8 + best.boxes / 16.0 && orientation_of(centre) == node.side;
    if (may_climb && looks_better(&s, centre, target)) {
      climbs++;
      climb_from(&s, cell, centre, &best);
    }
    if (longest < 1e-5) continue;
    push_halves(&heap, &node, at, target + slack);
  }
  free(heap.nodes);
  return best;
}
