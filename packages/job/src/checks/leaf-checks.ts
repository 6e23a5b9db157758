import type { Fault } from "../fault.ts";
import type { DocumentPart } from "./document-part.ts";
import { repeatedNames } from "./unique-names.ts";

/** What must hold inside one leaf, and between it and the ram that it names. */
export function leafFaults(leaf: DocumentPart, rams: readonly DocumentPart[]): Fault[] {
  const faults: Fault[] = [];
  const length = leaf.number("lengthMm");
  const heel = leaf.number("heelMm");
  if (length !== null && heel !== null && heel >= length) {
    faults.push(
      leaf.fault(["heelMm"], `a heel nearer to the hinge axis than the leaf's other end, ${length} mm`),
    );
  }
  faults.push(...ramOfLeafFaults(leaf, rams, length));
  faults.push(...repeatedNames(leaf.list("fixed"), "name", "a name"));
  for (const thing of leaf.list("fixed")) {
    // Limits are named after what they keep clear of, and "clearance.leaf" is taken.
    if (thing.text("name") === "leaf") faults.push(thing.fault(["name"], 'a name other than "leaf"'));
  }
  faults.push(...repeatedNames(leaf.list("brackets", "post"), "id", "an id"));
  faults.push(...repeatedNames(leaf.list("brackets", "leaf"), "id", "an id"));
  faults.push(...postFacesFaults(leaf));
  return faults;
}

function ramOfLeafFaults(leaf: DocumentPart, rams: readonly DocumentPart[], length: number | null): Fault[] {
  const id = leaf.text("ram");
  if (id === null) return [];
  const ram = rams.find((candidate) => candidate.text("id") === id);
  if (!ram) {
    const ids = rams.flatMap((candidate) => candidate.text("id") ?? []);
    const known =
      ids.length === 0 ? "there are none" : ids.slice(0, 10).join(", ") + (ids.length > 10 ? ", …" : "");
    return [leaf.fault(["ram"], `the id of a ram in rams (${known})`)];
  }
  const retracted = ram.number("retractedMm");
  if (retracted === null || length === null || retracted < length) return [];
  return [ram.fault(["retractedMm"], `a ram shorter than the leaf that it moves, ${length} mm`)];
}

const faceReadings = new Set(["postPinFromRamFace", "postPinFromGatewayFace"]);

function postFacesFaults(leaf: DocumentPart): Fault[] {
  if (leaf.has("post")) return [];
  const onFace = leaf.list("brackets", "post").some((bracket) => bracket.has("face"));
  const fromFace = leaf
    .list("asBuilt", "readings")
    .some((reading) => faceReadings.has(reading.text("kind") ?? ""));
  if (!onFace && !fromFace) return [];
  const why = onFace ? "brackets are bolted to them" : "readings are taken from them";
  return [
    leaf.fault(["post"], `the faces of the hinge post {gatewayFaceAlongMm, ramFaceOutMm}, because ${why}`),
  ];
}
