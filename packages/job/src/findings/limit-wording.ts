import type { Limit } from "@pintle/core";
import type { Display } from "../schema/job.ts";
import { limitName } from "./limit-names.ts";
import { shownAmount, shownSlack } from "./shown-amount.ts";

/**
 * What one limit says in plain words, in the job's display units.
 *
 * ### Example
 *   const limit = { id: "clearance.leaf", state: "pass" as const, unit: "m" as const, value: 0.075, limit: 0.05, slack: 0.025, atAngle: 0, where: null };
 *   expect(limitText(limit, "us")).toBe('Clearance to the leaf: 2 15/16", 1 15/16" needed, least at 0°; 1" to spare');
 */
export function limitText(limit: Limit, display: Display): string {
  const name = withCapital(limitName(limit.id));
  if (limit.state === "not-checked") return `${name}: not checked; ${whyNotChecked(limit.id)}`;
  const { value, limit: bound, slack, atAngle } = limit;
  if (limit.state === "not-applicable" || value === null || bound === null || slack === null) {
    return `${name}: does not apply; there is nothing to compare`;
  }
  const shown = (amount: number) => shownAmount(amount, limit.unit, display);
  const at = atAngle === null ? "" : ` at ${shownAmount(atAngle, "rad", display)}`;
  const rest = shownSlack(slack, limit.unit, display);
  if (limit.id === "stroke.retracted") {
    return `${name}: ${shown(value)}${at}, and the ram with its margin goes down to ${shown(bound)}; ${rest}`;
  }
  if (limit.id === "stroke.extended") {
    return `${name}: ${shown(value)}${at}, and the ram with its margin goes up to ${shown(bound)}; ${rest}`;
  }
  if (value < 0) {
    return `${name}: overlaps by ${shown(-value)}${at}, where ${shown(bound)} is needed; ${rest}`;
  }
  // A limit of nothing is worth no mention as long as it is kept.
  const needed = bound === 0 && slack >= 0 ? "" : `, ${shown(bound)} needed`;
  const spare = bound === 0 && slack >= 0 ? "" : `; ${rest}`;
  return `${name}: ${shown(value)}${needed}${at === "" ? "" : `, least${at}`}${spare}`;
}

function whyNotChecked(id: string): string {
  return id === "force"
    ? "the loads on the leaf are not known yet"
    : "something that it needs is not known yet";
}

function withCapital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
