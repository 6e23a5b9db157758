import { type Display, displayUnit, formatQuantity } from "@pintle/job";

/** A value in a document's unit as a person reads it; `display` chooses metric or US. */
export function shownQuantity(value: number, unit: string | null, display: Display): string {
  if (unit === "mm") return formatQuantity(value / 1000, displayUnit("length", display));
  if (unit === "deg") return formatQuantity((value * Math.PI) / 180, "deg");
  if (unit === null || unit === "ratio") return value.toFixed(2);
  return `${Number(value.toPrecision(4))} ${unit}`;
}

/** Speed of the toe, for which a document carries millimetres a second. */
export function shownToeSpeed(mmS: number, display: Display): string {
  return formatQuantity(mmS / 1000, displayUnit("toeSpeed", display));
}

export function shownForce(newtons: number, display: Display): string {
  return formatQuantity(newtons, displayUnit("force", display));
}

export function shownTime(seconds: number): string {
  return `${Math.round(seconds)} s`;
}

/** A reserve rounded down to what a tape shows, as in its sentence, so that the two agree and neither promises too much. */
export function shownReserve(mm: number, display: Display): string {
  const grid = display === "us" ? 25.4 / 16 : 0.1;
  return shownQuantity(Math.floor(mm / grid + 1e-6) * grid, "mm", display);
}
