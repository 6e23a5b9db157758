/** The parts of a limit's id: `clearance.pier` is a clearance to the thing "pier". */
function split(id: string): { readonly family: string; readonly thing: string } {
  const dot = id.indexOf(".");
  return dot < 0 ? { family: id, thing: "" } : { family: id.slice(0, dot), thing: id.slice(dot + 1) };
}

/**
 * What a limit is called in a sentence, lower case at the start. The thing's own name is kept as typed.
 *
 * ### Example
 *   expect(limitName("clearance.pier")).toBe("clearance to pier");
 *   expect(limitName("deadCentre")).toBe("angle to dead centre");
 */
export function limitName(id: string): string {
  const { family, thing } = split(id);
  switch (id) {
    case "stroke.retracted":
      return "shortest pin-to-pin length";
    case "stroke.extended":
      return "longest pin-to-pin length";
    case "clearance.leaf":
      return "clearance to the leaf";
    case "rod.contact":
      return "clearance of the rod";
    case "lever":
      return "lever arm";
    case "deadCentre":
      return "angle to dead centre";
    case "force":
      return "force";
    case "sweep.otherLeaf":
      return "clearance of the swinging leaf to the other leaf";
  }
  if (family === "clearance") return `clearance to ${thing}`;
  if (family === "sweep") return `clearance of the swinging leaf to ${thing}`;
  return id;
}

/** Path below a leaf of what decides a limit; `fixed` are the names of its fixed things. */
export function limitPath(id: string, fixed: readonly string[]): string {
  switch (id) {
    case "clearance.leaf":
      return "need.clearanceMm";
    case "lever":
      return "need.leverMm";
    case "deadCentre":
      return "need.deadCentreDeg";
    case "force":
      return "need.forceFactor";
  }
  const { family, thing } = split(id);
  const index = family === "clearance" || family === "sweep" ? fixed.indexOf(thing) : -1;
  return index < 0 ? "placement" : `fixed[${index}]`;
}

/** Key of `need` that a limit is held against, null when no need sets it. */
export function limitNeed(
  id: string,
): "clearanceMm" | "fixedClearanceMm" | "leverMm" | "deadCentreDeg" | "sweepMm" | null {
  if (id === "clearance.leaf") return "clearanceMm";
  if (id === "lever") return "leverMm";
  if (id === "deadCentre") return "deadCentreDeg";
  const { family } = split(id);
  if (family === "clearance") return "fixedClearanceMm";
  return family === "sweep" ? "sweepMm" : null;
}
