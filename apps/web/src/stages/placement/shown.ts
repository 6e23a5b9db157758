import { type Display, displayUnit, formatQuantity, type Shown, toSi } from "@pintle/job";

/** An SI amount in the job's units, as text. */
export const shown = (si: number, what: Shown, display: Display): string =>
  formatQuantity(si, displayUnit(what, display));

/** Millimetres in the job's units, as text. */
export const shownMm = (mm: number, display: Display): string => shown(toSi(mm, "mm"), "length", display);

/** Degrees as text. */
export const shownDeg = (degrees: number): string => formatQuantity(toSi(degrees, "deg"), "deg");

/** A dimension as a drafter writes it: millimetres go without their unit. */
export const onDimension = (mm: number, display: Display): string => shownMm(mm, display).replace(/ mm$/, "");

/** The nearest millimetre, or sixteenth of an inch: what a tape can set out. */
export function onTape(mm: number, display: Display): number {
  const step = display === "us" ? 25.4 / 16 : 1;
  return Math.round(Math.round(mm / step) * step * 1e6) / 1e6;
}
