import "./no-eval.ts";
import * as z from "zod";
import { freeText, shortText } from "./bounded-number.ts";

const howError = 'how the value came about: "tape", "scale", "meter", "level", "makersSheet" or "assumed"';
const whenError = "a date such as 2026-03-14, or with a time such as 2026-03-14T09:30";

/** Where a value comes from: who found it, when and how. `assumed` marks a value that nobody measured. */
export const originSchema = z
  .object(
    {
      how: z
        .enum(["tape", "scale", "meter", "level", "makersSheet", "assumed"], { error: howError })
        .meta({ description: "How the value came about" }),
      who: shortText("who found the value").optional(),
      when: z
        .string({ error: whenError })
        .regex(/^\d{4}-\d\d-\d\d(T\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)?)?$/, { error: whenError })
        .meta({ description: "ISO 8601 date, or date and time" })
        .optional(),
      note: freeText("note on the value").optional(),
      typed: shortText("the value as it was typed").optional(),
    },
    { error: 'an object with "how"' },
  )
  .meta({ id: "origin" });

/** Origins of an object's values by key; a key that holds an object or a list speaks for all within. */
export const originsSchema = z
  .record(z.string(), originSchema, { error: "an object of origins, one for each key of this object" })
  .meta({ id: "origins", description: "Where the values of this object come from, by key" });

export type Origin = z.infer<typeof originSchema>;
