import { type Display, formatQuantity, toSi, type Unit, type ValueOrigin } from "@pintle/job";

// The unit that ends a key of the job file, and the one in which people read it.
const endings: readonly (readonly [string, Unit, Unit])[] = [
  ["MmS", "mm/s", "in/s"],
  ["Mm", "mm", "in"],
  ["Deg", "deg", "deg"],
  ["Kg", "kg", "lb"],
  ["Ms", "m/s", "mph"],
  ["N", "N", "lbf"],
];

/**
 * A value of the job in words, with its amount where it is one number: `need clearance 50 mm`.
 *
 * `under` is the start of the path that goes without saying.
 *
 * ### Example
 *   const value = { path: "leaves[0].need.clearanceMm", value: 50, standing: "assumed" as const, isDefault: true, origin: null };
 *   expect(valueInWords(value, "leaves[0]", "metric")).toBe("need clearance 50 mm (usual value)");
 */
export function valueInWords(value: ValueOrigin, under: string, display: Display): string {
  const path = value.path.startsWith(under) ? value.path.slice(under.length) : value.path;
  const ending = endings.find(([end]) => path.endsWith(end));
  const bare = ending === undefined ? path : path.slice(0, -ending[0].length);
  const words = bare
    .replace(/\[(\d+)\]/g, (_, index: string) => ` ${Number(index) + 1}`)
    .replace(/\./g, " ")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .trim();
  const amount =
    ending !== undefined && typeof value.value === "number"
      ? ` ${formatQuantity(toSi(value.value, ending[1]), display === "us" ? ending[2] : ending[1])}`
      : "";
  return `${words}${amount}${value.isDefault ? " (usual value)" : ""}`;
}
