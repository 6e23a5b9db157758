#ifndef PINTLE_BENCH_READ_CASE_H
#define PINTLE_BENCH_READ_CASE_H

#include "model.h"

void read_case(Case *c);
int read_placements(double pins[][4], int most);

#endif
