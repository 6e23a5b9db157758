import "./no-eval.ts";
import * as z from "zod";
import { boundedNumber, choices, coordinateMm, positiveMm, rangeMm, shortText } from "./bounded-number.ts";
import { originsSchema } from "./origin.ts";

const faceSchema = z
  .enum(["ramSide", "gateway"], { error: 'the post\'s face: "ramSide" or "gateway"' })
  .meta({ description: "Face of the hinge post that the bracket is bolted to" });

const onFace = {
  id: shortText("id of the bracket"),
  face: faceSchema,
  positionMm: rangeMm("position along the face: along on the ram side, out on the gateway side"),
  stepMm: positiveMm("step between possible positions, anywhere when left out", 5000).optional(),
  origin: originsSchema.optional(),
};

const standOff = coordinateMm("stand-off of the pin from the face");

const plateSchema = z.object({
  kind: z.literal("plate"),
  ...onFace,
  standOffMm: choices(standOff, "stand-offs of the pin from the face [mm]"),
});

const slottedSchema = z.object({
  kind: z.literal("slotted"),
  ...onFace,
  slotMm: rangeMm("stand-off of the pin from the face"),
});

const indexingSchema = z.object({
  kind: z.literal("indexing"),
  ...onFace,
  boltStandOffMm: coordinateMm("stand-off of the bolt from the face"),
  radiusMm: positiveMm("bolt to pin", 5000),
  anglesDeg: choices(
    boundedNumber("locking angle, counter-clockwise from along", "deg", { from: -360, upTo: 360 }),
    "angles at which the arm locks [deg]",
  ),
});

const weldedSchema = z.object({
  kind: z.literal("welded"),
  id: shortText("id of the bracket"),
  alongMm: rangeMm("where the pin may go, along"),
  outMm: rangeMm("where the pin may go, out"),
  origin: originsSchema.optional(),
});

/** A bracket that carries the post pin (rule G13). */
export const postBracketSchema = z.discriminatedUnion(
  "kind",
  [plateSchema, slottedSchema, indexingSchema, weldedSchema],
  { error: 'a post bracket whose kind is "plate", "slotted", "indexing" or "welded"' },
);

/** A bracket that carries the leaf pin: stand-offs from the ram-side face, landing on listed solid members (rule G13). */
export const leafBracketSchema = z.object(
  {
    id: shortText("id of the bracket"),
    standOffMm: choices(standOff, "stand-offs of the pin from the leaf's ram-side face [mm]"),
    membersMm: choices(
      rangeMm("solid member that the bracket may land on, along"),
      "solid members [from, to] [mm]",
    ),
    origin: originsSchema.optional(),
  },
  { error: "a leaf bracket {id, standOffMm, membersMm}" },
);

const listOf = <T extends z.ZodType>(bracket: T, what: string) => {
  const error = `a list of 1 to 100 ${what}`;
  return z.array(bracket, { error }).min(1, { error }).max(100, { error }).optional();
};

/** Brackets at hand for each pin; those of one pin replace `reach` for that pin. */
export const bracketsSchema = z
  .object(
    {
      post: listOf(postBracketSchema, "post brackets"),
      leaf: listOf(leafBracketSchema, "leaf brackets"),
    },
    { error: "an object with the brackets for post and leaf" },
  )
  .meta({ id: "brackets" });

export type JobPostBracket = z.infer<typeof postBracketSchema>;
export type JobLeafBracket = z.infer<typeof leafBracketSchema>;
export type JobBrackets = z.infer<typeof bracketsSchema>;
