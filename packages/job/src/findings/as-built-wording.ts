import type { AsBuiltEstimate, Measure, Mend, MissingReading, PinMend, Slip, Suspect } from "@pintle/core";
import type { Display } from "../schema/job.ts";
import { limitName } from "./limit-names.ts";
import { shownAmount } from "./shown-amount.ts";

/**
 * What a tape reading runs between, in plain words (rule G18).
 *
 * ### Example
 *   expect(measureText({ kind: "pinToPin", leafAt: "open" }, "metric")).toBe("pin to pin with the leaf open");
 */
export function measureText(measure: Measure, display: Display): string {
  switch (measure.kind) {
    case "hingeToPostPin":
      return "hinge axis to post pin, straight";
    case "hingeToLeafPin":
      return "hinge axis to leaf pin, straight";
    case "pinToPin": {
      const { leafAt } = measure;
      const at = typeof leafAt === "object" ? `at ${shownAmount(leafAt.angle, "rad", display)}` : leafAt;
      return `pin to pin with the leaf ${at}`;
    }
    case "postPinFromClosedLine":
      return "post pin from the closed leaf's line";
    case "postPinFromRamFace":
      return "post pin from the post's ram-side face";
    case "postPinFromGatewayFace":
      return "post pin from the post's gateway face";
    case "leafPinFromLeafFace":
      return "leaf pin from the leaf's face";
    case "leafPinFromHeel":
      return "leaf pin from the leaf's hinge end";
  }
}

/** Where the pins are and how sure that is, one sentence a pin. */
export function estimateLines(estimate: AsBuiltEstimate, display: Display): string[] {
  const mm = (metres: number) => shownAmount(metres, "m", display);
  const { placement, standardErrors: sure } = estimate;
  const { openAngle } = estimate;
  return [
    `Post pin: along ${mm(placement.postPin.along)} (± ${mm(sure.postPin.along)}), out ${mm(placement.postPin.out)} (± ${mm(sure.postPin.out)}).`,
    `Leaf pin: along ${mm(placement.leafPin.along)} (± ${mm(sure.leafPin.along)}), off ${mm(placement.leafPin.off)} (± ${mm(sure.leafPin.off)}).`,
    ...(openAngle.kind === "estimated"
      ? [
          `Opening angle: ${shownAmount(openAngle.value, "rad", display)} (± ${shownAmount(openAngle.standardError, "rad", display)}).`,
        ]
      : openAngle.kind === "noOpenReading"
        ? ["Opening angle: not found; no pin-to-pin reading was taken with the leaf open."]
        : []),
    ...(estimate.readingsAgree === null
      ? ["No reading to spare: a misread one would not show. One more would check the rest."]
      : []),
    ...(estimate.readingsAgree === false
      ? ["The readings do not agree with each other within their errors."]
      : []),
    ...(estimate.ambiguity === null
      ? []
      : ["Other pins fit these readings about as well; those nearest the plan are taken."]),
    ...(estimate.ambiguity?.settledBy
      ? [`To tell them apart, measure ${measureText(estimate.ambiguity.settledBy.measure, display)}.`]
      : []),
  ];
}

/** One reading under suspicion: what it says, what the others make of it, what slip would explain it. */
export function suspectText(suspect: Suspect, name: string, display: Display): string {
  const mm = (metres: number) => shownAmount(metres, "m", display);
  const should = suspect.expected === null ? "" : `; the others say ${mm(suspect.expected.value)}`;
  const slip = suspect.slips[0];
  return `${name}: ${mm(suspect.value)} read${should}${slip === undefined ? "" : ` (${slipText(slip, display)})`}`;
}

function slipText(slip: Slip, display: Display): string {
  const intended = shownAmount(slip.intended, "m", display);
  switch (slip.kind) {
    case "digitsSwapped":
      return `digits swapped? ${intended}`;
    case "offBy":
      return `off by ${shownAmount(Math.abs(slip.by), "m", display)}? ${intended}`;
    case "unit":
      return `read in ${slip.read}, written as ${slip.written}? ${intended}`;
  }
}

/** What is still missing to know the pins, and which reading would settle it best. */
export function missingLines(missing: MissingReading, display: Display): string[] {
  const best = missing.best?.measures.map((measure) => measureText(measure, display)).join(" and ");
  const count = missing.count === 1 ? "One more reading is" : `${missing.count} more readings are`;
  return [
    `${count} needed to know where the pins are.`,
    best === undefined ? "No tape reading of those known would settle it." : `Best: measure ${best}.`,
  ];
}

/** The smallest move of each pin that mends what fails, nearest first; or that there is none. */
export function mendLines(mend: Mend, display: Display): string[] {
  if (mend.kind === "notNeeded") return [];
  const line = (pin: string, one: PinMend): string => {
    const mm = (metres: number) => shownAmount(Math.abs(metres), "m", display);
    if (one.kind === "stopped") return `Moving the ${pin} alone: not settled, the search stopped.`;
    if (one.kind === "none") return `No move of the ${pin} alone, up to ${mm(one.radius)}, mends it.`;
    const isPost = pin === "post pin";
    const along =
      one.along >= 0
        ? isPost
          ? "toward the gateway"
          : "toward the toe"
        : isPost
          ? "away from the gateway"
          : "toward the heel";
    const across = one.across >= 0 ? (isPost ? "out" : "off the leaf") : isPost ? "in" : "nearer the leaf";
    return `To mend it, move the ${pin} ${mm(one.distance)}: ${mm(one.along)} ${along} and ${mm(one.across)} ${across}.`;
  };
  return [
    `As it is this fails: ${mend.failing.map(limitName).join(", ")}.`,
    line("post pin", mend.postPin),
    line("leaf pin", mend.leafPin),
  ];
}
