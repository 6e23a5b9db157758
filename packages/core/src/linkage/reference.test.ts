import { describe, expect, test } from "vitest";
import crane from "../../../../reference/linkage/articulated-crane.json" with { type: "json" };
import excavator from "../../../../reference/linkage/excavator-arm.json" with { type: "json" };
import forces from "../../../../reference/linkage/gate-forces-case-19.json" with { type: "json" };
import table from "../../../../reference/linkage/gate-table.json" with { type: "json" };
import pickup from "../../../../reference/linkage/pickup-crane.json" with { type: "json" };
import lighter from "../../../../reference/linkage/platform-200-kg.json" with { type: "json" };
import heavier from "../../../../reference/linkage/platform-204-kg.json" with { type: "json" };
import triangle from "../../../../reference/linkage/three-four-five.json" with { type: "json" };
import { leastThrustAngle } from "./dead-centre.ts";
import { leverArm } from "./lever-arm.ts";
import { pinToPin } from "./pin-to-pin.ts";
import type { Placement, Travel } from "./pins.ts";

// Statics problems of other people in this frame: hinge in the origin, the arm is the "leaf". Forces come from
// lever arms alone (torque ÷ lever, rule G6); the hinge then bears what is left over in the balance of forces.

const radians = (angle: number) => (angle * Math.PI) / 180;
const degrees = (angle: number) => (angle * 180) / Math.PI;
const travel: Travel = { swing: "toward", openAngle: 1 };

const linkage = ([along, out]: readonly number[], [d, off]: readonly number[]): Placement => ({
  postPin: { along: along ?? Number.NaN, out: out ?? Number.NaN },
  leafPin: { along: d ?? Number.NaN, off: off ?? Number.NaN },
  rise: 0,
});

const polar = (radius: number, angleDeg: number) => [
  radius * Math.cos(radians(angleDeg)),
  radius * Math.sin(radians(angleDeg)),
];

/** Ram force that holds loads hung at `x` from the hinge, and what the hinge must add [same unit as the loads]. */
function balance(placement: Placement, loads: readonly { readonly x: number; readonly down: number }[]) {
  const torque = loads.reduce((sum, { x, down }) => sum + x * down, 0);
  const weight = loads.reduce((sum, { down }) => sum + down, 0);
  const ram = torque / leverArm(placement, travel, 0);
  const { postPin, leafPin } = placement;
  const length = pinToPin(placement, travel, 0);
  const [ux, uy] = [(leafPin.along - postPin.along) / length, (leafPin.off - postPin.out) / length];
  const hinge = [-ram * ux, weight - ram * uy] as const;
  return { ram, ramAngleDeg: degrees(Math.atan2(uy, ux)), hinge, hingeSize: Math.hypot(...hinge) };
}

const share = (found: number, expected: number) => Math.abs(found / expected - 1);

describe("[G5] [G6] reference cases", () => {
  test(heavier.id, () => {
    const { input, expected, tolerance } = heavier;
    const placement = linkage(input.postPin, polar(input.leafPinRadius, input.armAngleDeg));
    const loads = input.loads.map(({ atRadius, down }) => ({
      x: polar(atRadius, input.armAngleDeg)[0]!,
      down,
    }));
    const { hinge, hingeSize } = balance(placement, loads);
    expect(share(hingeSize, expected.hingeForce)).toBeLessThan(tolerance.force);
    expect(Math.abs(degrees(Math.atan2(-hinge[1], -hinge[0])) - expected.hingeAngleDeg)).toBeLessThan(
      tolerance.angleDeg,
    );
  });

  test(lighter.id, () => {
    const { input, expected, tolerance } = lighter;
    const placement = linkage(input.postPin, polar(input.leafPinRadius, input.armAngleDeg));
    const loads = input.loads.map(({ atRadius, down }) => ({
      x: polar(atRadius, input.armAngleDeg)[0]!,
      down,
    }));
    const { ram, ramAngleDeg, hinge, hingeSize } = balance(placement, loads);
    expect(share(ram, expected.ramForce)).toBeLessThan(tolerance.force);
    expect(Math.abs(ramAngleDeg - expected.ramAngleDeg)).toBeLessThan(tolerance.angleDeg);
    expect(share(hingeSize, expected.hingeForce)).toBeLessThan(tolerance.force);
    expect(Math.abs(degrees(Math.atan2(-hinge[1], -hinge[0])) - expected.hingeAngleDeg)).toBeLessThan(
      tolerance.angleDeg,
    );
    expect(Math.abs(pinToPin(placement, travel, 0) - expected.length)).toBeLessThan(tolerance.length);
    expect(Math.abs(leverArm(placement, travel, 0) - expected.lever)).toBeLessThan(tolerance.length);
    // sin(angle at the leaf pin) = lever ÷ leaf-pin radius.
    const atLeafPin = degrees(leastThrustAngle(placement, { ...travel, openAngle: 1e-12 }).value);
    expect(Math.abs(atLeafPin - expected.angleAtLeafPinDeg)).toBeLessThan(tolerance.ownAngleDeg);
  });

  test(excavator.id, () => {
    const { input, expected, tolerance } = excavator;
    const placement = linkage(input.postPin, input.leafPinAt);
    const { ram } = balance(
      placement,
      input.loads.map(({ atX, down }) => ({ x: atX, down })),
    );
    expect(share(ram, expected.ramForce)).toBeLessThan(tolerance.force);
    expect(Math.abs(leverArm(placement, travel, 0) - expected.lever)).toBeLessThan(tolerance.lever);
  });

  test(pickup.id, () => {
    const { input, expected, tolerance } = pickup;
    const placement = linkage(input.postPin, polar(input.leafPinRadius, input.armAngleDeg));
    const lever = leverArm(placement, travel, 0);
    expect(share(input.ramForce * lever, expected.moment)).toBeLessThan(tolerance.moment);
    expect(Math.abs(lever - expected.lever)).toBeLessThan(tolerance.length);
    expect(Math.abs(pinToPin(placement, travel, 0) - expected.length)).toBeLessThan(tolerance.length);
  });

  test(crane.id, () => {
    const { input, expected, tolerance } = crane;
    const [x, y] = input.leafPinAt as [number, number];
    // The lever is the distance of the ram's line from the hinge, wherever along it the far pin sits.
    for (const back of [1, 2.5]) {
      const [bx, by] = polar(back, input.ramAngleDeg) as [number, number];
      const placement = linkage([x - bx, y - by], [x, y]);
      const { ram, hinge } = balance(
        placement,
        input.loads.map(({ atX, down }) => ({ x: atX, down })),
      );
      expect(share(ram, expected.ramForce)).toBeLessThan(tolerance.force);
      expect(share(-hinge[0], expected.hingeAcross)).toBeLessThan(tolerance.force);
      expect(share(-hinge[1], expected.hingeDown)).toBeLessThan(tolerance.force);
    }
  });

  test(triangle.id, () => {
    const { input, expected, tolerance } = triangle;
    const placement = linkage(polar(input.postRadius, input.angleAtHingeDeg), [input.leafRadius, 0]);
    expect(Math.abs(pinToPin(placement, travel, 0) - expected.length)).toBeLessThan(tolerance.length);
    expect(Math.abs(leverArm(placement, travel, 0) - expected.lever)).toBeLessThan(tolerance.length);
  });

  test(table.id, () => {
    const { input, expected, tolerance } = table;
    const placement = linkage(input.postPin, input.leafPin);
    input.anglesDeg.forEach((angle, i) => {
      const theta = radians(angle);
      expect(Math.abs(pinToPin(placement, travel, theta) - expected.length[i]!)).toBeLessThan(
        tolerance.length,
      );
      expect(Math.abs(leverArm(placement, travel, theta) - expected.lever[i]!)).toBeLessThan(
        tolerance.length,
      );
      const radius = Math.hypot(...(input.leafPin as [number, number]));
      const atLeafPin = degrees(Math.asin(leverArm(placement, travel, theta) / radius));
      expect(Math.abs(atLeafPin - expected.angleAtLeafPinDeg[i]!)).toBeLessThan(tolerance.angleDeg);
    });
    const least = leastThrustAngle(placement, { swing: "toward", openAngle: Math.PI / 2 });
    expect(Math.abs(degrees(least.value) - expected.angleAtLeafPinDeg.at(-1)!)).toBeLessThan(
      tolerance.angleDeg,
    );
  });

  test(forces.id, () => {
    const { input, expected, tolerance } = forces;
    const placement = linkage(input.postPin, input.leafPin);
    const { ram, hinge } = balance(placement, [{ x: input.pushRadius, down: input.push }]);
    expect(Math.abs(pinToPin(placement, travel, 0) - expected.length)).toBeLessThan(tolerance.length);
    expect(Math.abs(leverArm(placement, travel, 0) - expected.lever)).toBeLessThan(tolerance.length);
    const near = (found: number, printed: number) =>
      expect(Math.abs(Math.abs(found) - printed)).toBeLessThan(tolerance.newtons);
    near(ram, expected.ramForce);
    near(hinge[0], expected.hingeAlong);
    // The ram's line falls toward the leaf pin, so that its share across adds to what the hinge bears.
    const fall = Math.atan2(input.postPin[1]! - input.leafPin[1]!, input.leafPin[0]! - input.postPin[0]!);
    near(ram * Math.sin(fall), expected.ramAcross);
    near(ram * Math.sin(fall) - input.push, expected.hingeAcross);
  });
});
