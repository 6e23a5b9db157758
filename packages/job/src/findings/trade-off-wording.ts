import type { PlacementKind, TradeOffs } from "@pintle/core";
import { displayUnit } from "../quantity/display-units.ts";
import { formatQuantity } from "../quantity/format-quantity.ts";
import type { Display } from "../schema/job.ts";
import { shownAmount } from "./shown-amount.ts";

const kinds: Record<PlacementKind, string> = {
  forgiving: "forgives the largest error",
  strong: "longest lever arm: most force, slowest toe",
  tuckedIn: "post pin stands out least",
  otherBracket: "best with another bracket",
};

/**
 * In what a placement is the best of those shown (rule G14).
 *
 * ### Example
 *   expect(kindText("forgiving")).toBe("forgives the largest error");
 */
export const kindText = (kind: PlacementKind): string => kinds[kind];

/**
 * What a placement gives and costs, one phrase each (rule G14), in the job's display units.
 *
 * ### Example
 *   const tradeOffs = { forceMargin: null, leastLever: 0.14, toeSpeed: 0.46, thrustAtToe: null, leafClearance: 0.064, openingTime: 18, runOut: 0.037, standsOut: 0.17, leverRatio: 1.6 };
 *   expect(tradeOffPhrases(tradeOffs, "metric")).toContain("opens in 18 s");
 */
export function tradeOffPhrases(tradeOffs: TradeOffs, display: Display): string[] {
  const length = (metres: number) => shownAmount(metres, "m", display);
  const { toeSpeed, openingTime, leafClearance, thrustAtToe } = tradeOffs;
  return [
    `lever arm at least ${length(tradeOffs.leastLever)}`,
    ...(toeSpeed === null
      ? []
      : [`toe at most ${formatQuantity(toeSpeed, displayUnit("toeSpeed", display))}`]),
    ...(openingTime === null ? [] : [`opens in ${Math.round(openingTime)} s`]),
    ...(leafClearance === null ? [] : [`${length(leafClearance)} clear of the leaf`]),
    ...(thrustAtToe === null
      ? []
      : [`at least ${formatQuantity(thrustAtToe, displayUnit("force", display))} at the toe at full thrust`]),
    `rod ${length(tradeOffs.runOut)} out when hung`,
  ];
}
