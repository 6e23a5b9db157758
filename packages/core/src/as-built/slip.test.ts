import { describe, expect, test } from "vitest";
import { slipsThatExplain } from "./slip.ts";

// Every case is made by hand: a true length, the slip, and what is then written down.
describe("[G18] common slips of the tape", () => {
  test.each([
    ["two digits swapped", 1.102, 1.0121, { kind: "digitsSwapped", intended: 1.012 }],
    ["100 mm forgotten", 0.912, 1.0121, { kind: "offBy", by: -0.1 }],
    ["10 mm too much", 0.822, 0.8122, { kind: "offBy", by: 0.01 }],
    ["a foot miscounted", 1.3168, 1.0121, { kind: "offBy", by: 0.3048 }],
    ["centimetres written as millimetres", 0.0912, 0.9121, { kind: "unit", read: "cm", written: "mm" }],
    ["inches written as millimetres", 0.0355, 0.9013, { kind: "unit", read: "in", written: "mm" }],
    ["inches written as centimetres", 0.355, 0.9013, { kind: "unit", read: "in", written: "cm" }],
  ])("%s", (_, value, expected, slip) => {
    expect(slipsThatExplain(value, expected, 0.002)[0]).toMatchObject(slip);
  });

  test("an error that no slip makes is not explained", () => {
    expect(slipsThatExplain(0.937, 0.9, 0.002)).toEqual([]);
  });

  test("a reading that is right needs no explanation", () => {
    expect(slipsThatExplain(0.9, 0.9004, 0.002)).toEqual([]);
  });

  test("an offset to the other side keeps its sign", () => {
    expect(slipsThatExplain(-0.162, -0.1265, 0.002)[0]).toMatchObject({
      kind: "digitsSwapped",
      intended: -0.126,
    });
  });
});
