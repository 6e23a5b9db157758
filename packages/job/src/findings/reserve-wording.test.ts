import { expect, test } from "vitest";
import { reserveText } from "./reserve-wording.ts";

test("[G11] a reserve is rounded down and a shortfall up, never the other way", () => {
  const say = (reserve: number) => reserveText({ reserve, unit: "m", firstToBreak: null }, "metric");
  expect(say(0.02509)).toBe("every pin may be 25 mm off and this still works");
  expect(say(0.025)).toBe("every pin may be 25 mm off and this still works");
  expect(say(0.00004)).toBe("every pin may be 0 mm off and this still works");
  expect(say(-0.01761)).toBe("this does not work as it is: 17.7 mm short");
  expect(say(-0.00001)).toBe("this does not work as it is: 0.1 mm short");
});

test("[G11] in US units, and as a ratio where no length is broken", () => {
  expect(reserveText({ reserve: 0.026, unit: "m", firstToBreak: "clearance.pier" }, "us")).toBe(
    'every pin may be 1" off and this still works; first to go: clearance to pier',
  );
  expect(reserveText({ reserve: -0.25, unit: "ratio", firstToBreak: "deadCentre" }, "metric")).toBe(
    "this does not work as it is: 25 % short; broken most: angle to dead centre",
  );
});
