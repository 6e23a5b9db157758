import { type Display, type PlacementDocument, plainReachName } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import type { Page } from "./page.ts";
import { plainTable } from "./plain-table.ts";
import { shownForce, shownQuantity, shownReserve, shownTime, shownToeSpeed } from "./shown-quantity.ts";

interface ComparedRow {
  readonly label: string;
  readonly of: (placement: PlacementDocument, display: Display) => string | null;
}

const mm = (value: number, display: Display) => shownQuantity(value, "mm", display);

const rows: readonly ComparedRow[] = [
  { label: "reserve", of: ({ reserveMm }, display) => shownReserve(reserveMm, display) },
  {
    label: "least lever arm",
    of: ({ tradeOffs }, display) => mm(tradeOffs.leastLeverMm, display),
  },
  {
    label: "push at the toe",
    of: ({ tradeOffs: { thrustAtToeN } }, display) =>
      thrustAtToeN === null ? null : shownForce(thrustAtToeN, display),
  },
  {
    label: "greatest toe speed",
    of: ({ tradeOffs: { toeSpeedMmS } }, display) =>
      toeSpeedMmS === null ? null : shownToeSpeed(toeSpeedMmS, display),
  },
  {
    label: "opens in",
    of: ({ tradeOffs: { openingTimeS } }) => (openingTimeS === null ? null : shownTime(openingTimeS)),
  },
  {
    label: "clear of the leaf",
    of: ({ tradeOffs: { leafClearanceMm } }, display) =>
      leafClearanceMm === null ? null : mm(leafClearanceMm, display),
  },
  { label: "pins stand out", of: ({ tradeOffs }, display) => mm(tradeOffs.standsOutMm, display) },
  { label: "rod out when hung", of: ({ tradeOffs }, display) => mm(tradeOffs.runOutMm, display) },
  { label: "post pin along", of: ({ postPin }, display) => mm(postPin.alongMm, display) },
  { label: "post pin out", of: ({ postPin }, display) => mm(postPin.outMm, display) },
  { label: "leaf pin along", of: ({ leafPin }, display) => mm(leafPin.alongMm, display) },
  { label: "leaf pin off", of: ({ leafPin }, display) => mm(leafPin.offMm, display) },
  { label: "post bracket", of: ({ postBracket }) => bracket(postBracket) },
  { label: "leaf bracket", of: ({ leafBracket }) => bracket(leafBracket) },
];

/** Placements side by side, the best first, with what each gives and costs (rule G14). */
export function placementComparison(
  placements: readonly PlacementDocument[],
  display: Display,
  page: Page,
): string[] {
  const widest = Math.max(...rows.map(({ label }) => label.length));
  const each = Math.floor((page.columns - widest) / placements.length) - 2;
  const head = [
    { head: "", align: "left" as const },
    ...placements.map(({ kindText }) => ({
      head: cleanText(kindText),
      align: "left" as const,
      widest: Math.max(10, Math.min(26, each)),
    })),
  ];
  const body = rows.flatMap(({ label, of }) => {
    const cells = placements.map((placement) => of(placement, display));
    return cells.every((cell) => cell === null) ? [] : [[label, ...cells.map((cell) => cell ?? "not known")]];
  });
  return [page.style.strong("Placements that differ in kind"), ...plainTable(head, body)];
}

const bracket = (name: string) => (name === plainReachName ? null : cleanText(name));
