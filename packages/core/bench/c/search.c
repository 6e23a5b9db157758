/* Port of src/search/branch-and-bound.ts, incumbent.ts and node-heap.ts: branch and bound over boxes of placements. */
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

/* The best so far, and how many climbs were paid for. */
typedef struct {
  Search *search;
  Found best;
  int climbs;
} Incumbent;

static void offer(Incumbent *incumbent, const double pins[4], Score score) {
  Found *best = &incumbent->best;
  if (!score.feasible || (best->found && score.value <= best->reserve)) return;
  best->found = true;
  best->reserve = score.value;
  memcpy(best->pins, pins, sizeof best->pins);
}

static void climb_from(Incumbent *incumbent, const Cell *cell, const double start[4]) {
  double pins[4];
  incumbent->climbs++;
  Score score = climb(incumbent->search, cell, start, pins);
  offer(incumbent, pins, score);
}

static bool looks_better(Search *s, const double pins[4], double target) {
  static const double nowhere[4] = {0};
  BoxQuestion question = {s->end, target, pins, nowhere, true};
  Rows rows;
  limit_rows(s, orientation_of(pins), &question, &rows);
  for (int i = 0; i < rows.count; i++) {
    if (rows.b[i] < -1e-4 * rows.w[i]) return false;
  }
  return true;
}

static void middle_of(const Cell *cell, double middle[4], double half[4]) {
  for (int j = 0; j < 4; j++) {
    middle[j] = 0.5 * (cell->low[j] + cell->high[j]);
    half[j] = 0.5 * (cell->high[j] - cell->low[j]);
  }
}

/* First order above `target`, a proof below it; offers what looks better on the way. */
static double ceiling_of(Incumbent *incumbent, const Node *node, double target, bool may_climb) {
  Search *s = incumbent->search;
  const Cell *cell = &node->cell;
  if (!side_is_possible(cell, node->side)) return -INFINITY;
  double centre[4], half[4], move[4];
  middle_of(cell, centre, half);
  BoxQuestion question = {s->end, target, centre, half, false};
  Rows rows;
  if (!limit_rows(s, node->side, &question, &rows)) return -INFINITY;
  double slack = greatest_slack(&rows, half, move);
  if (slack < 0 || !may_climb) return target + slack;
  for (int j = 0; j < 4; j++) centre[j] = fmin(fmax(centre[j] + move[j], cell->low[j]), cell->high[j]);
  if (orientation_of(centre) == node->side && looks_better(s, centre, target)) climb_from(incumbent, cell, centre);
  return target + slack;
}

static double tolerance_after(int boxes) { return boxes < 1500 ? 5e-5 : boxes < 6000 ? 2e-4 : 4.5e-4; }

static int longest_side(const Cell *cell, double *length) {
  int at = 0;
  *length = -1;
  for (int j = 0; j < 4; j++) {
    double side = cell->high[j] - cell->low[j];
    if (side > *length) *length = side, at = j;
  }
  return at;
}

static void prepare_search(Search *s, const Case *c) {
  s->c = c;
  s->end = c->turn_sign * c->open_angle;
  s->functions = slack_functions(c, 1, s->left);
  slack_functions(c, -1, s->right);
  SlackFunction *next = s->corners;
  for (int k = 0; k < s->functions; k++) {
    if (ends_only(&s->left[k])) continue;
    next += corner_functions(&s->left[k], next);
    next += corner_functions(&s->right[k], next);
  }
}

static void push_halves(Heap *heap, const Node *node, int j, double ceiling) {
  Cell lower = node->cell, upper = node->cell;
  lower.high[j] = upper.low[j] = 0.5 * (node->cell.low[j] + node->cell.high[j]);
  push(heap, &lower, node->side, ceiling);
  push(heap, &upper, node->side, ceiling);
}

Found best_placement(const Case *c) {
  static Search s;
  prepare_search(&s, c);
  Incumbent incumbent = {.search = &s};
  Heap heap = {NULL, 0, 0, 0};
  Cell whole;
  double middle[4], half[4];
  memcpy(whole.low, c->low, sizeof whole.low);
  memcpy(whole.high, c->high, sizeof whole.high);
  middle_of(&whole, middle, half);
  climb_from(&incumbent, &whole, middle);
  for (double side = 1; side >= -1; side -= 2) {
    if (side_is_possible(&whole, side)) push(&heap, &whole, side, INFINITY);
  }
  int boxes = 0;
  Node node;
  while (pop(&heap, &node)) {
    const Found *best = &incumbent.best;
    double target = best->found ? best->reserve + tolerance_after(boxes) : 0, longest;
    double ceiling = ceiling_of(&incumbent, &node, target, incumbent.climbs < 8 + boxes / 16.0);
    boxes++;
    int at = longest_side(&node.cell, &longest);
    if (ceiling < target) continue;
    if (longest < 1e-5) {
      middle_of(&node.cell, middle, half);
      offer(&incumbent, middle, score_of(&s, middle));
      continue;
    }
    push_halves(&heap, &node, at, ceiling);
  }
  free(heap.nodes);
  incumbent.best.boxes = boxes;
  return incumbent.best;
}
