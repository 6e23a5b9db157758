import type { Cell } from "./cell.ts";

/** A box still to be looked at. */
export interface SearchNode {
  readonly cell: Cell;
  /** On which side of the hinge the thrust line is taken to pass (`orientationOf`). */
  readonly side: 1 | -1;
  /** First-order guess of the best reserve inside, from its parent [m]. Orders the search only. */
  readonly ceiling: number;
  /** Its part of the whole, for progress. */
  readonly share: number;
}

/** Boxes by most promising first; equals in the order they came, so that the search is deterministic. */
export class NodeHeap {
  readonly #nodes: SearchNode[] = [];
  readonly #order: number[] = [];
  #count = 0;

  get size(): number {
    return this.#nodes.length;
  }

  push(node: SearchNode): void {
    const nodes = this.#nodes;
    let i = nodes.length;
    nodes.push(node);
    this.#order.push(this.#count++);
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (!this.#before(i, parent)) break;
      this.#swap(i, parent);
      i = parent;
    }
  }

  pop(): SearchNode | undefined {
    const nodes = this.#nodes;
    const top = nodes[0];
    const last = nodes.pop();
    const lastOrder = this.#order.pop();
    if (nodes.length === 0 || last === undefined || lastOrder === undefined) return top;
    nodes[0] = last;
    this.#order[0] = lastOrder;
    for (let i = 0; ; ) {
      const left = 2 * i + 1;
      if (left >= nodes.length) break;
      const child = left + 1 < nodes.length && this.#before(left + 1, left) ? left + 1 : left;
      if (!this.#before(child, i)) break;
      this.#swap(child, i);
      i = child;
    }
    return top;
  }

  #before(i: number, j: number): boolean {
    const a = (this.#nodes[i] as SearchNode).ceiling;
    const b = (this.#nodes[j] as SearchNode).ceiling;
    return a === b ? (this.#order[i] as number) < (this.#order[j] as number) : a > b;
  }

  #swap(i: number, j: number): void {
    const node = this.#nodes[i] as SearchNode;
    this.#nodes[i] = this.#nodes[j] as SearchNode;
    this.#nodes[j] = node;
    const order = this.#order[i] as number;
    this.#order[i] = this.#order[j] as number;
    this.#order[j] = order;
  }
}
