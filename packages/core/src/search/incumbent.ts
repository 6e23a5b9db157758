import type { Pins } from "../placement/slack-function.ts";
import type { Cell } from "./cell.ts";
import { climb, type Score, scoreOf } from "./climb.ts";
import type { SearchCase } from "./search-case.ts";

/** The best placement that a search knows so far, and the one that misses least while it knows none. */
export class Incumbent {
  readonly search: SearchCase;
  #best: { readonly pins: Pins; readonly reserve: number; readonly cell: Cell } | null = null;
  #miss: { readonly pins: Pins; readonly value: number } | null = null;
  #climbs = 0;

  constructor(search: SearchCase) {
    this.search = search;
  }

  get best() {
    return this.#best;
  }

  /** The best placement, or failing that the nearest miss. */
  get nearest(): Pins | null {
    return this.#best?.pins ?? this.#miss?.pins ?? null;
  }

  /** How many climbs were paid for; each costs as much as some ten boxes. */
  get climbs(): number {
    return this.#climbs;
  }

  offer(pins: Pins, cell: Cell, score: Score = scoreOf(this.search, pins)): void {
    if (score.feasible) {
      if (this.#best !== null && score.value <= this.#best.reserve) return;
      this.#best = { pins: pins.slice(), reserve: score.value, cell };
    } else if (this.#miss === null || score.value > this.#miss.value) {
      this.#miss = { pins: pins.slice(), value: score.value };
    }
  }

  climbFrom(cell: Cell, start: Pins): void {
    this.#climbs++;
    const { pins, score } = climb(this.search, cell, start);
    this.offer(pins, cell, score);
  }
}
