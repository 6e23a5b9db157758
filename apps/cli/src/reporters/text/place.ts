import { type Display, type Job, limitName } from "@pintle/job";
import type { NothingFits, PlaceDocument, PlacementDocument } from "../../documents.ts";
import { cleanText } from "../../output/clean-text.ts";
import { jobHeading } from "./job-heading.ts";
import type { Page } from "./page.ts";
import { planText } from "./plan.ts";
import { sentence } from "./sentence.ts";
import { shownQuantity } from "./shown-quantity.ts";
import { slackBars } from "./slack-bars.ts";

/** The best placement of each leaf in full, the others in a line each. */
export function placeText(job: Job, found: PlaceDocument, page: Page): string[] {
  const display = job.display ?? "metric";
  return [
    ...jobHeading(job, page.style),
    ...found.leaves.flatMap(({ id, placements: [best, ...others], nothingFits, notSearched }) => [
      "",
      page.style.strong(`Leaf ${cleanText(id)}`),
      ...(best === undefined ? [] : bestPlacement(job, id, best, display, page)),
      ...(others.length > 0
        ? ["", "Others that differ:", ...others.map((one) => `  ${inOneLine(one, display)}`)]
        : []),
      ...(notSearched === undefined ? [] : [page.style.warn(sentence(`not searched: ${notSearched}`))]),
      ...(nothingFits === null ? [] : nothingFitsText(nothingFits, page)),
    ]),
  ];
}

function bestPlacement(
  job: Job,
  id: string,
  best: PlacementDocument,
  display: Display,
  page: Page,
): string[] {
  return [
    (best.reserveMm < 0 ? page.style.bad : page.style.good)(sentence(best.reserveText)),
    "",
    ...pinLines(best, display),
    "",
    ...slackBars(best.limits, display, page.style),
    ...(best.settingOut ?? []).flatMap(({ text }, index) => [
      ...(index === 0 ? ["", "Setting out:"] : []),
      `  ${text}`,
    ]),
    ...(page.plan ? ["", ...placementPlan(job, id, best, page.columns)] : []),
  ];
}

function pinLines({ postPin, leafPin, ram }: PlacementDocument, display: Display): string[] {
  const mm = (value: number) => shownQuantity(value, "mm", display);
  return [
    `post pin  along ${mm(postPin.alongMm)}, out ${mm(postPin.outMm)}`,
    `leaf pin  along ${mm(leafPin.alongMm)}, off ${mm(leafPin.offMm)}`,
    ...(ram === undefined ? [] : [`ram       ${cleanText(ram)}`]),
  ];
}

function inOneLine({ postPin, leafPin, reserveMm, tradeOffs }: PlacementDocument, display: Display): string {
  const mm = (value: number) => shownQuantity(value, "mm", display);
  const pins = `post ${mm(postPin.alongMm)}, ${mm(postPin.outMm)}; leaf ${mm(leafPin.alongMm)}, ${mm(leafPin.offMm)}`;
  return [`reserve ${mm(reserveMm)}: ${pins}`, ...(tradeOffs ?? [])].join("; ");
}

function nothingFitsText({ binding, changes }: NothingFits, page: Page): string[] {
  return [
    page.style.bad("Nothing within reach fits."),
    `What stands in the way: ${binding.map((id) => cleanText(limitName(id))).join(", ")}.`,
    ...(changes.length > 0 ? ["Any one of these would make it fit:"] : []),
    ...changes.map(({ text }) => `  ${cleanText(text)}`),
  ];
}

function placementPlan(
  job: Job,
  id: string,
  { postPin, leafPin, ram, riseMm }: PlacementDocument,
  columns: number,
) {
  const leaf = job.leaves.find((one) => one.id === id);
  if (leaf === undefined) return [];
  const usedRam = (job.rams ?? []).find((one) => one.id === (ram ?? leaf.ram)) ?? null;
  const placement = { postPin, leafPin, ...(riseMm === undefined ? {} : { riseMm }) };
  return planText({ leaf, placement, ram: usedRam }, columns);
}
