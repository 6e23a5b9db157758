import type { JobLeaf, JobReading } from "@pintle/job";
import { type Phrase, text } from "../../strings/text.ts";

/** A choice of what the tape runs between; "pin to pin" comes twice, since the leaf stands somewhere. */
export interface ReadingKind {
  readonly id: string;
  readonly name: string;
  readonly reading: (valueMm: number) => JobReading;
}

const plain = [
  "hingeToPostPin",
  "hingeToLeafPin",
  "postPinFromClosedLine",
  "postPinFromRamFace",
  "postPinFromGatewayFace",
  "leafPinFromLeafFace",
  "leafPinFromHeel",
] as const;

/** What can be measured on a leaf: readings from the post's faces only where the job knows these. */
export function readingKinds(leaf: JobLeaf): ReadingKind[] {
  const named = (id: string) => text(`built.kind.${id}` as Phrase);
  const faces = leaf.post !== undefined;
  return [
    { id: "pinToPinClosed", name: named("pinToPinClosed"), reading: pinToPin("closed") },
    { id: "pinToPinOpen", name: named("pinToPinOpen"), reading: pinToPin("open") },
    ...plain
      .filter((kind) => faces || !(kind === "postPinFromRamFace" || kind === "postPinFromGatewayFace"))
      .map((kind) => ({
        id: kind,
        name: named(kind),
        reading: (valueMm: number): JobReading => ({ kind, valueMm }),
      })),
  ];
}

const pinToPin =
  (leafAt: "closed" | "open") =>
  (valueMm: number): JobReading => ({ kind: "pinToPin", valueMm, leafAt });

/** The name of a reading that the job holds. */
export function readingName(reading: JobReading): string {
  if (reading.kind !== "pinToPin") return text(`built.kind.${reading.kind}`);
  if (reading.leafAt === "closed") return text("built.kind.pinToPinClosed");
  if (reading.leafAt === "open") return text("built.kind.pinToPinOpen");
  return text("built.kind.pinToPinAt", { angle: reading.leafAt });
}
