import { type Display, displayUnit, formatQuantity } from "@pintle/job";

/** A value in a document's unit as a person reads it; `display` chooses metric or US. */
export function shownQuantity(value: number, unit: string | null, display: Display): string {
  if (unit === "mm") return formatQuantity(value / 1000, displayUnit("length", display));
  if (unit === "deg") return formatQuantity((value * Math.PI) / 180, "deg");
  if (unit === null || unit === "ratio") return value.toFixed(2);
  return `${Number(value.toPrecision(4))} ${unit}`;
}
