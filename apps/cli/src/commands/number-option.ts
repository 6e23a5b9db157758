import { InvalidArgumentError } from "commander";

/** Reads a whole number within bounds from an option. */
export function wholeNumber(from: number, upTo: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= from && value <= upTo) return value;
    throw new InvalidArgumentError(`Expected a whole number from ${from} to ${upTo}.`);
  };
}

/** Reads a number above zero, up to a bound, from an option. */
export function positiveNumber(upTo: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^(\d+\.?\d*|\.\d+)$/.test(text) && value > 0 && value <= upTo) return value;
    throw new InvalidArgumentError(`Expected a number above 0, at most ${upTo}.`);
  };
}
