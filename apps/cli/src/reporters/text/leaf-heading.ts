import type { Job, JobRam } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import type { Page } from "./page.ts";
import { shownQuantity } from "./shown-quantity.ts";
import { wrapped } from "./wrapped.ts";

/** A line across the page with the leaf's name, then what gate it is and what moves it. */
export function leafHeading(job: Job, id: string, page: Page): string[] {
  const leaf = job.leaves.find((one) => one.id === id);
  const name = `── Leaf ${cleanText(id)} `;
  const heading =
    page.style.strong(name) + page.style.quiet("─".repeat(Math.max(2, page.columns - name.length)));
  if (leaf === undefined) return ["", heading];
  const display = job.display ?? "metric";
  const ram = (job.rams ?? []).find((one) => one.id === leaf.ram);
  const away = leaf.swing === "away" ? "away from" : "toward";
  const facts = [
    `${shownQuantity(leaf.lengthMm, "mm", display)} long`,
    `hinged on the ${leaf.hingeSide} as seen from the ram's side`,
    `opens ${shownQuantity(leaf.openAngleDeg, "deg", display)} ${away} the ram`,
    ram === undefined ? "no ram chosen" : `ram ${ramName(ram)}`,
  ];
  return ["", heading, ...wrapped(facts.join("; "), page.columns).map(page.style.quiet), ""];
}

/** A ram's name as its maker gives it, and its id in the job where that says something else. */
function ramName({ id, name }: JobRam): string {
  const [shown, key] = [cleanText(name ?? id), cleanText(id)];
  return shown.toLowerCase().replaceAll(" ", "-") === key.toLowerCase() ? shown : `${shown} (${key})`;
}
