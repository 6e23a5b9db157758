import type { Dimension, DimensionId } from "@pintle/core";
import type { Display } from "../schema/job.ts";
import { shownAmount } from "./shown-amount.ts";

/** Both ways of a signed dimension: what it is called when positive, and when negative. */
const names: Record<DimensionId, readonly [string, string]> = {
  postPinBehindHinge: [
    "post pin behind the hinge axis, along the closed leaf's line",
    "post pin in front of the hinge axis, toward the latch, along the closed leaf's line",
  ],
  postPinOut: [
    "post pin out from the closed leaf's line through the hinge axis, to the ram's side",
    "post pin out from the closed leaf's line through the hinge axis, to the other side",
  ],
  postPinFromRamFace: [
    "post pin out from the post's ram-side face",
    "post pin behind the post's ram-side face",
  ],
  postPinFromGatewayFace: [
    "post pin back from the post's gateway face",
    "post pin into the gateway from the post's gateway face",
  ],
  hingeToPostPin: ["hinge axis to post pin, straight", ""],
  leafPinFromHinge: [
    "leaf pin from the hinge axis, along the leaf",
    "leaf pin behind the hinge axis, along the leaf",
  ],
  leafPinFromHeel: [
    "leaf pin from the leaf's hinge end, along the leaf",
    "leaf pin beyond the leaf's hinge end",
  ],
  leafPinFromLeafFace: ["leaf pin off the leaf's ram-side face", "leaf pin behind the leaf's ram-side face"],
  hingeToLeafPin: ["hinge axis to leaf pin, straight", ""],
  pinRise: ["leaf pin above the post pin", "leaf pin below the post pin"],
  runOutAtSetUp: [
    "rod run out from fully in, when the ram is hung",
    "rod short of fully in, when the ram is hung",
  ],
  pinToPinAtSetUp: ["pin to pin, when the ram is hung", ""],
  pinToPinClosed: ["pin to pin with the leaf closed", ""],
  pinToPinOpen: ["pin to pin with the leaf open", ""],
};

/** A dimension in words, amount and name apart; `amount` empty where the name says it all. */
export interface DimensionWords {
  readonly amount: string;
  readonly name: string;
}

/**
 * What a dimension amounts to in the job's display units and what it is called (rule G17).
 *
 * ### Example
 *   expect(dimensionWords({ id: "hingeToPostPin", value: 0.2115, checks: ["postPinOut"] }, "metric")).toEqual({
 *     amount: "211.5 mm",
 *     name: "check: hinge axis to post pin, straight",
 *   });
 */
export function dimensionWords(dimension: Dimension, display: Display): DimensionWords {
  const [positive, negative] = names[dimension.id];
  const check = dimension.checks.length > 0 ? "check: " : "";
  if (dimension.id === "pinRise" && Math.abs(dimension.value) < 5e-5)
    return { amount: "", name: "both pins at the same height; the ram hangs level" };
  const name = dimension.value < 0 ? negative : positive;
  return { amount: shownAmount(Math.abs(dimension.value), "m", display), name: `${check}${name}` };
}

/**
 * A dimension to set out or to check by, in plain words (rule G17), in the job's display units.
 *
 * ### Example
 *   expect(dimensionText({ id: "postPinOut", value: 0.145, checks: [] }, "metric")).toBe(
 *     "145 mm  post pin out from the closed leaf's line through the hinge axis, to the ram's side",
 *   );
 */
export function dimensionText(dimension: Dimension, display: Display): string {
  const { amount, name } = dimensionWords(dimension, display);
  return amount === "" ? name : `${amount}  ${name}`;
}

/**
 * The position in which the ram is hung, in plain words (rule G17).
 *
 * ### Example
 *   expect(setUpText("open")).toContain("leaf open");
 */
export const setUpText = (leafIs: "open" | "closed"): string =>
  `Hang the ram with the leaf ${leafIs} and the rod nearly in. Support the free end whenever only one pin holds it.`;
