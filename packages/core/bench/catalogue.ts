import { once } from "node:events";
import type { MessagePort } from "node:worker_threads";
import { Worker } from "node:worker_threads";
import { prepare } from "../src/placement/limits.ts";
import type { Ram } from "../src/ram/ram.ts";
import { bestPlacement } from "../src/search/best-placement.ts";
import { reach, situation } from "./example-job.ts";
import { inventedRams } from "./invented-rams.ts";

export const catalogue = inventedRams(50);

/** The example's search with another ram. @returns the best reserve in reach, null when nothing fits */
function searchWith(ram: Ram): number | null {
  const found = bestPlacement(prepare({ ...situation, ram }), reach);
  if (found.status === "stopped") throw new Error(`search with ${ram.id} stopped at its ${found.why}`);
  return found.status === "found" ? found.reserve : null;
}

export const searchCatalogue = (): (number | null)[] => catalogue.map(searchWith);

/** The worker's side: searches with the rams asked for and answers with their reserves. */
export function serveCatalogue(port: MessagePort): void {
  port.on("message", (indices: readonly number[]) => {
    port.postMessage(indices.map((index) => searchWith(catalogue[index] as Ram)));
  });
}

/** Workers that search the catalogue together, a few rams at a time to whoever is free. */
export class CatalogueWorkers {
  readonly #workers: Worker[];

  constructor(count: number, script: URL) {
    this.#workers = Array.from({ length: count }, () => new Worker(script));
  }

  async search(): Promise<(number | null)[]> {
    const reserves: (number | null)[] = [];
    const chunk = 2;
    let next = 0;
    await Promise.all(
      this.#workers.map(async (worker) => {
        while (next < catalogue.length) {
          const from = next;
          next = Math.min(catalogue.length, next + chunk);
          worker.postMessage(Array.from({ length: next - from }, (_, i) => from + i));
          const [found] = await once(worker, "message");
          for (const [i, reserve] of (found as (number | null)[]).entries()) reserves[from + i] = reserve;
        }
      }),
    );
    return reserves;
  }

  async end(): Promise<void> {
    await Promise.all(this.#workers.map((worker) => worker.terminate()));
  }
}
