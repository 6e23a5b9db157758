import {
  type Display,
  displayUnit,
  formatQuantity,
  fromSi,
  type Job,
  toSi,
  type ValueOrigin,
} from "@pintle/job";
import { text } from "../../strings/text.ts";
import { shownMm } from "./shown.ts";

/** Endings of job keys and how what they hold is shown. */
const endings = [
  ["MmS", "rodSpeed", "mm/s"],
  ["Mm", "length", "mm"],
  ["Deg", "angle", "deg"],
  ["Kg", "mass", "kg"],
  ["Ms", "wind", "m/s"],
  ["N", "force", "N"],
] as const;

/** The ending of a value's key with its unit, or null for a bare number. */
export function endingOf(path: string): (typeof endings)[number] | null {
  const key =
    path
      .split(".")
      .at(-1)
      ?.replace(/\[\d+\]$/, "") ?? "";
  return endings.find(([ending]) => key.endsWith(ending)) ?? null;
}

/** A value of the job in its reader's units: numbers, ranges, outlines. */
export function valueWords({ path, value }: ValueOrigin, display: Display): string {
  const ending = endingOf(path);
  const one = (number: number): string => {
    if (ending === null) return String(number);
    const [, what, unit] = ending;
    if (what === "length") return shownMm(number, display);
    return formatQuantity(toSi(number, unit), displayUnit(what, display));
  };
  if (typeof value === "number") return one(value);
  if (!Array.isArray(value)) return String(value);
  if (value.every((item) => typeof item === "number")) {
    return value.map((item) => one(item as number)).join(value.length === 2 ? " … " : ", ");
  }
  return (value as number[][]).map((pair) => `(${pair.map((item) => one(item)).join(", ")})`).join(" ");
}

/** A path of the job as its reader would say it: `leaves[0].placement.postPin.alongMm` is "post pin along". */
export function valueName(path: string, job: Job): string {
  const named = path
    .replace(/^leaves\[(\d+)\]\.?/, (_, index) =>
      job.leaves.length > 1 ? `leaf ${job.leaves[Number(index)]?.id}: ` : "",
    )
    .replace(/^rams\[(\d+)\]\.?/, (_, index) => {
      const ram = job.rams?.[Number(index)];
      return `${ram?.name ?? ram?.id}: `;
    })
    .replace(/fixed\[(\d+)\]\.?/, "fixed ")
    .replace(/\b(placement|asBuilt|site)\./, "")
    .replace(/\[(\d+)\]/g, (_, index) => ` ${Number(index) + 1} `)
    .replaceAll(".", " ");
  return named
    .replace(/(?:MmS|Mm|Deg|Kg|Ms|N)(?=\s|$)/g, "")
    .replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)
    .replace(/\s+/g, " ")
    .trim();
}

/** Who, when, how; or that it is only assumed. */
export function originWords({ standing, isDefault, origin }: ValueOrigin): string {
  if (isDefault) return text("values.default");
  const how = {
    measured: origin === null ? text("values.measured") : `${text("values.measured")} (${origin.how})`,
    makersSheet: text("values.makersSheet"),
    assumed: text("values.assumedMark"),
    notStated: text("values.notStated"),
  }[standing];
  const parts = [how, origin?.who, origin?.when, origin?.note].filter((part) => part !== undefined);
  return parts.join(", ");
}

/** A number typed for a value, SI, as the job file writes it. */
export function inFileUnit(path: string, si: number): number {
  const ending = endingOf(path);
  return ending === null ? si : fromSi(si, ending[2]);
}
