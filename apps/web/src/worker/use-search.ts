import { type Remote, wrap } from "comlink";
import { useCallback, useEffect, useRef, useState } from "react";
import type { Searches } from "./search-worker.ts";

export type Search<Found, Told> =
  | { readonly state: "idle" }
  | { readonly state: "working"; readonly told: Told | null }
  | { readonly state: "done"; readonly found: Found }
  | { readonly state: "stopped" };

/**
 * One kind of search in a worker of its own. A worker in the middle of a search hears nothing, so stopping it
 * means ending it; the next search starts a new one.
 */
export function useSearch<Found, Told>(
  ask: (searches: Remote<Searches>, tell: (told: Told) => void) => Promise<Found>,
): {
  readonly search: Search<Found, Told>;
  readonly start: () => void;
  readonly stop: () => void;
  readonly forget: () => void;
} {
  const [search, setSearch] = useState<Search<Found, Told>>({ state: "idle" });
  const worker = useRef<Worker | null>(null);
  const latestAsk = useRef(ask);
  latestAsk.current = ask;
  const end = useCallback(() => {
    worker.current?.terminate();
    worker.current = null;
  }, []);
  const start = useCallback(() => {
    end();
    const started = new Worker(new URL("./search-worker.ts", import.meta.url), { type: "module" });
    worker.current = started;
    const isCurrent = () => worker.current === started;
    setSearch({ state: "working", told: null });
    const tell = (told: Told) => {
      if (isCurrent()) setSearch({ state: "working", told });
    };
    void latestAsk
      .current(wrap<Searches>(started), tell)
      .then((found) => {
        if (isCurrent()) setSearch({ state: "done", found });
      })
      .catch(() => {
        if (isCurrent()) setSearch({ state: "stopped" });
      })
      .finally(() => {
        if (isCurrent()) end();
      });
  }, [end]);
  const stop = useCallback(() => {
    end();
    setSearch({ state: "stopped" });
  }, [end]);
  const forget = useCallback(() => {
    end();
    setSearch({ state: "idle" });
  }, [end]);
  useEffect(() => end, [end]);
  return { search, start, stop, forget };
}
