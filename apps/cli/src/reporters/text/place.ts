import type { Job, PlaceDocument, PlaceLeafDocument, PlacementDocument } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import type { AppliedChange } from "../../place/apply-change.ts";
import { closing } from "./closing.ts";
import { jobHeading } from "./job-heading.ts";
import { leafHeading } from "./leaf-heading.ts";
import { nothingFitsLines } from "./nothing-fits.ts";
import type { Page } from "./page.ts";
import { placementComparison } from "./placement-comparison.ts";
import { planText } from "./plan.ts";
import { ramRanking } from "./ram-ranking.ts";
import { reserveMapPicture } from "./reserve-map-picture.ts";
import { sentence } from "./sentence.ts";
import { settingOutLines } from "./setting-out.ts";
import { slackBars } from "./slack-bars.ts";
import { wrapped } from "./wrapped.ts";

type Found = PlaceDocument & { readonly applied?: readonly AppliedChange[] };

/** For each leaf the verdict, the limits, the drawing and the sheet to drill by; then what else there is to choose from. */
export function placeText(job: Job, { leaves, applied = [] }: Found, page: Page): string[] {
  return [
    ...jobHeading(job, page.style),
    ...applied.flatMap(({ leaf, text }) =>
      wrapped(`Leaf ${cleanText(leaf)}, changed: ${cleanText(text)}.`, page.columns),
    ),
    ...leaves.flatMap((leaf) => [...leafHeading(job, leaf.id, page), ...leafLines(job, leaf, page)]),
    ...closing(job, page),
  ];
}

function leafLines(job: Job, found: PlaceLeafDocument, page: Page): string[] {
  const display = job.display ?? "metric";
  const { id, placements, nothingFits, notSearched, rams, map } = found;
  const leaf = job.leaves.find((one) => one.id === id);
  const [best] = placements;
  return [
    ...(best === undefined ? [] : bestPlacement(job, id, best, page)),
    ...(placements.length > 1 ? ["", ...placementComparison(placements, display, page)] : []),
    ...(notSearched === undefined ? [] : wrapped(sentence(`not searched: ${notSearched}`), page.columns)),
    ...(nothingFits === null ? [] : nothingFitsLines(nothingFits, display, page)),
    ...(rams === undefined ? [] : ["", ...ramRanking(rams, display, page)]),
    ...(map === undefined || leaf === undefined ? [] : ["", ...reserveMapPicture(map, leaf, display, page)]),
  ];
}

function bestPlacement(job: Job, id: string, best: PlacementDocument, page: Page): string[] {
  return [
    ...wrapped(sentence(best.reserveText), page.columns).map(page.style.strong),
    ...(best.firstToBreakText === null
      ? []
      : wrapped(sentence(`it goes first with the ${best.firstToBreakText}`), page.columns)),
    "",
    ...slackBars(best.limits, job.display ?? "metric", page),
    ...(page.plan ? ["", ...placementPlan(job, id, best, page)] : []),
    "",
    ...settingOutLines(best, page),
  ];
}

export function placementPlan(
  job: Job,
  id: string,
  { postPin, leafPin, ram, riseMm }: PlacementDocument,
  page: Page,
) {
  const leaf = job.leaves.find((one) => one.id === id);
  if (leaf === undefined) return [];
  const usedRam = (job.rams ?? []).find((one) => one.id === ram) ?? null;
  return planText(
    { leaf, placement: { postPin, leafPin, riseMm }, ram: usedRam, display: job.display ?? "metric" },
    page,
  );
}
