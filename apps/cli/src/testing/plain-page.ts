import type { Page } from "../reporters/text/page.ts";
import { createStyle } from "../reporters/text/style.ts";

/** A page without colour and without a drawing, for a job called gate.json. */
export function plainPage(change: Partial<Page> = {}): Page {
  return {
    style: createStyle(false),
    columns: 80,
    plan: false,
    again: (command, ...options) => ["pintle", command, "gate.json", ...options].join(" "),
    ...change,
  };
}
