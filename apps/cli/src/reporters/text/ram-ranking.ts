import type { Display, RamRankDocument } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import type { Page } from "./page.ts";
import { plainTable } from "./plain-table.ts";
import { shownQuantity, shownReserve, shownTime, shownToeSpeed } from "./shown-quantity.ts";
import { wrapped } from "./wrapped.ts";

/** Every ram on one leaf, the most forgiving first, then those that do not suit and why (rule G15). */
export function ramRanking(ranks: readonly RamRankDocument[], display: Display, page: Page): string[] {
  const mm = (value: number) => shownQuantity(value, "mm", display);
  const suited = ranks.flatMap(({ ram, reserveMm, tradeOffs }) =>
    reserveMm === null || tradeOffs === null
      ? []
      : [
          [
            cleanText(ram),
            shownReserve(reserveMm, display),
            mm(tradeOffs.leastLeverMm),
            tradeOffs.toeSpeedMmS === null ? "-" : shownToeSpeed(tradeOffs.toeSpeedMmS, display),
            tradeOffs.openingTimeS === null ? "-" : shownTime(tradeOffs.openingTimeS),
          ],
        ],
  );
  const right = (head: string) => ({ head, align: "right" as const });
  const columns = [
    { head: "ram", align: "left" as const },
    ...["reserve", "least lever", "toe speed", "opens in"].map(right),
  ];
  const unsuited = ranks.filter(({ reserveMm }) => reserveMm === null);
  const widest = Math.max(0, ...unsuited.map(({ ram }) => cleanText(ram).length));
  return [
    page.style.strong(`Rams: ${suited.length} of ${ranks.length} suit this leaf`),
    ...(suited.length > 0 ? plainTable(columns, suited) : []),
    ...(unsuited.length > 0 ? [page.style.strong("Do not suit")] : []),
    ...unsuited.flatMap(({ ram, reasons }) =>
      wrapped(cleanText(reasons.join("; ")), page.columns, `${cleanText(ram).padEnd(widest)}  `),
    ),
  ];
}
