/*
 * kernel answers            reserve of every placement, then what the search finds
 * kernel <task> <samples>   one time a line [ns]; task: swing, reserve (of the first placement), search
 * The case comes on standard input. Times are wall clock, a call each, after a tenth of the samples to warm up.
 */
#define _POSIX_C_SOURCE 199309L
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "read-case.h"
#include "search.h"

enum { MAX_PLACEMENTS = 64 };

static Case the_case;
static double placements[MAX_PLACEMENTS][4];

/* One leaf's swing: the series over 91 angles and every limit. The sum lets both sides be compared. */
static double swing(const double pins[4]) {
  SwingSeries series;
  Limit limits[MAX_LIMITS];
  swing_series(&the_case, pins, &series);
  int n = limits_of(&the_case, pins, limits);
  double sum = 0;
  for (int i = 0; i < n; i++) sum += limits[i].value;
  for (int i = 0; i < SWING_ANGLES; i++) {
    sum += series.pin_to_pin[i] + series.lever[i] + series.leaf_gap[i] + series.fixed_gap[i] + series.toe_speed[i];
  }
  return sum;
}

static double run(const char *task) {
  if (strcmp(task, "swing") == 0) return swing(placements[0]);
  if (strcmp(task, "reserve") == 0) return reserve_of(&the_case, placements[0]).reserve;
  if (strcmp(task, "search") == 0) return best_placement(&the_case).reserve;
  fprintf(stderr, "task: found %s, expected swing, reserve or search\n", task);
  exit(2);
}

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return 1e9 * (double)t.tv_sec + (double)t.tv_nsec;
}

static void print_answers(int count) {
  for (int i = 0; i < count; i++) printf("%.17g\n", reserve_of(&the_case, placements[i]).reserve);
  printf("%.17g\n", swing(placements[0]));
  Found found = best_placement(&the_case);
  printf("%d %.17g\n", found.boxes, found.found ? found.reserve : -1);
  for (int j = 0; j < 4; j++) printf("%.17g\n", found.pins[j]);
}

int main(int argc, char **argv) {
  if (argc < 2) {
    fprintf(stderr, "usage: kernel answers | swing|reserve|search <samples>\n");
    return 2;
  }
  read_case(&the_case);
  int count = read_placements(placements, MAX_PLACEMENTS);
  if (strcmp(argv[1], "answers") == 0) {
    print_answers(count);
    return 0;
  }
  int samples = argc > 2 ? atoi(argv[2]) : 100;
  double sum = 0;
  for (int i = -samples / 10 - 1; i < samples; i++) {
    double start = now();
    sum += run(argv[1]);
    double end = now();
    if (i >= 0) printf("%.0f\n", end - start);
  }
  /* Printed where nobody reads it, so that no compiler may leave the work out. */
  fprintf(stderr, "%g\n", sum);
  return 0;
}
