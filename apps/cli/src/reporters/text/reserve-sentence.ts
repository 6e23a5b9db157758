import type { Display } from "@pintle/job";
import { shownQuantity } from "./shown-quantity.ts";

/** The reserve in plain words (rules G11, I2). */
export function reserveSentence(reserveMm: number, firstToBreak: string | null, display: Display): string {
  const by = shownQuantity(Math.abs(reserveMm), "mm", display);
  const first = firstToBreak === null ? "" : ` What breaks first: ${firstToBreak}.`;
  if (reserveMm < 0) return `DOES NOT FIT: short by ${by}.${first}`;
  return `Every pin may be ${by} off, and all limits still hold.${first}`;
}
