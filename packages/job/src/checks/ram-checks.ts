import type { Fault } from "../fault.ts";
import type { DocumentPart } from "./document-part.ts";

/** What must hold between the numbers of one ram: margins inside the stroke, tube inside the retracted length. */
export function ramFaults(ram: DocumentPart): Fault[] {
  const faults: Fault[] = [];
  const retracted = ram.number("retractedMm");
  const stroke = ram.number("strokeMm");
  const margins = (ram.number("retractedMarginMm") ?? 0) + (ram.number("extendedMarginMm") ?? 0);
  if (stroke !== null && margins >= stroke) {
    faults.push(ram.fault(["strokeMm"], `a stroke longer than its two margins together, ${margins} mm`));
  }
  if (retracted !== null) {
    for (const stretch of ram.list("tube")) {
      const end = stretch.number("toMm");
      if (end !== null && end > retracted) {
        faults.push(stretch.fault(["toMm"], `a tube that ends within the retracted length, ${retracted} mm`));
      }
    }
  }
  return faults;
}
