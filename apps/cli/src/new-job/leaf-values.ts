import { type Display, displayUnit, fromSi, parseQuantity } from "@pintle/job";

/** A value of a new leaf: how it is named, asked and read. */
export interface LeafValue {
  /** Key in the job file's leaf. */
  readonly key: "lengthMm" | "thicknessMm" | "openAngleDeg" | "swing" | "hingeSide" | "heelMm" | "faceMm";
  /** Option on the command line. */
  readonly option: string;
  /** What a person is asked; null for a value that is only taken from an option. */
  readonly question: string | null;
  readonly about: string;
  readonly read: (text: string, display: Display) => ReadValue;
  /** Taken when nobody says; null when the job makes no sense without an answer. */
  readonly assumed: number | string | null;
}

export type ReadValue =
  | { readonly ok: true; readonly value: number | string }
  | { readonly ok: false; readonly found: string; readonly expected: string };

function length(text: string, display: Display): ReadValue {
  const read = parseQuantity("length", text, displayUnit("length", display));
  return read.ok ? { ok: true, value: fromSi(read.si, "mm") } : read;
}

function angle(text: string): ReadValue {
  const read = parseQuantity("angle", text, "deg");
  return read.ok ? { ok: true, value: fromSi(read.si, "deg") } : read;
}

function oneOf(...words: readonly string[]): LeafValue["read"] {
  return (text) => {
    const value = words.find((word) => word === text.trim().toLowerCase());
    const expected = words.join(" or ");
    return value === undefined ? { ok: false, found: JSON.stringify(text), expected } : { ok: true, value };
  };
}

/** In the order in which they are asked. The assumed values are round figures to start from, no source. */
export const leafValues: readonly LeafValue[] = [
  {
    key: "lengthMm",
    option: "--length",
    question: "Length of the leaf, hinge axis to latch end",
    about: "hinge axis to the latch end of the leaf",
    read: length,
    assumed: null,
  },
  {
    key: "thicknessMm",
    option: "--thickness",
    question: "Thickness of the leaf",
    about: "thickness of the leaf",
    read: length,
    assumed: 50,
  },
  {
    key: "hingeSide",
    option: "--hinge-side",
    question: "Seen from the ram's side, are the hinges left or right",
    about: "left or right, seen from the ram's side",
    read: oneOf("left", "right"),
    assumed: "left",
  },
  {
    key: "swing",
    option: "--swing",
    question: "Does the leaf open toward the ram's side or away from it",
    about: "toward or away: does the leaf open to the ram's side",
    read: oneOf("toward", "away"),
    assumed: "toward",
  },
  {
    key: "openAngleDeg",
    option: "--open-angle",
    question: "How far does it open",
    about: "opening angle from closed",
    read: angle,
    assumed: 90,
  },
  {
    key: "heelMm",
    option: "--heel",
    question: null,
    about: "hinge axis to the hinge end of the leaf",
    read: length,
    assumed: 30,
  },
  {
    key: "faceMm",
    option: "--face",
    question: null,
    about: "hinge axis to the leaf's face on the ram's side",
    read: length,
    assumed: 25,
  },
];
