import Fraction from "fraction.js";

/** A number read from the start of a text, exactly, with what follows it. */
export interface TakenNumber {
  readonly value: Fraction;
  /** The number as typed. */
  readonly typed: string;
  readonly isWhole: boolean;
  readonly hasComma: boolean;
  readonly rest: string;
}

export type TakeNumber =
  | { readonly ok: true; readonly number: TakenNumber }
  | { readonly ok: false; readonly expected: string };

const mixed = /^(\d+)(?:\s*-\s*|\s+)(\d+)\s*\/\s*(\d+)/;
const plainFraction = /^(\d+)\s*\/\s*(\d+)/;
const decimal = /^(?:\d+(?:[.,]\d+)?|[.,]\d+)/;

/**
 * Text as people type it on phones and keyboards, with one spelling for each mark: primes, quotes, fraction
 * characters, fraction slashes, minus signs and kinds of space.
 */
export function withPlainMarks(text: string): string {
  return text
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (c) => ` ${c.normalize("NFKD")}`)
    .replaceAll("\u2044", "/")
    .replace(/[\u2032\u2018\u2019\u02b9\u02bc\u00b4`]/g, "'")
    .replace(/[\u2033\u201c\u201d\u02ba]/g, '"')
    .replaceAll("''", '"')
    .replace(/[\u2212\u2010\u2011\u2012\u2013]/g, "-")
    .replace(/\s+/g, " ")
    .trim();
}

/**
 * Takes a number off the start of a text: `3200`, `3.2`, `3,2`, `1/2`, `1 1/2`, `1-1/2`. Exact, without sign.
 *
 * A comma followed by exactly three digits after a number other than 0 is refused: it separates thousands for some and decimals for others,
 * and a length that is wrong by a thousand must not pass.
 */
export function takeNumber(text: string): TakeNumber {
  const whole = mixed.exec(text);
  if (whole) {
    const [typed, units = "", over = "", under = ""] = whole;
    if (Number(under) === 0 || Number(over) >= Number(under)) {
      return { ok: false, expected: "a fraction below one after the whole number, such as 6 1/2" };
    }
    return taken(new Fraction(over).div(under).add(units), typed, text, false);
  }
  const fraction = plainFraction.exec(text);
  if (fraction) {
    const [typed, over = "", under = ""] = fraction;
    if (Number(under) === 0) return { ok: false, expected: "a fraction that is not divided by nothing" };
    return taken(new Fraction(over).div(under), typed, text, false);
  }
  const [typed] = decimal.exec(text) ?? [];
  if (typed === undefined) return { ok: false, expected: "a number first" };
  if (/^0*[1-9]\d*,\d{3}$/.test(typed)) {
    const plain = typed.replace(",", "");
    return {
      ok: false,
      expected: `${plain} or ${typed.replace(",", ".")}: a comma before three digits can mean either`,
    };
  }
  return taken(new Fraction(typed.replace(",", ".").replace(/^\./, "0.")), typed, text, /^\d+$/.test(typed));
}

function taken(value: Fraction, typed: string, text: string, isWhole: boolean): TakeNumber {
  const rest = text.slice(typed.length).trimStart();
  return { ok: true, number: { value, typed, isWhole, hasComma: typed.includes(","), rest } };
}
