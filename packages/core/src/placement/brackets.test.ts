import { describe, expect, test } from "vitest";
import { cellsOf } from "../search/cell.ts";
import { leafPinSites, postPinSites } from "./brackets.ts";
import type { Span } from "./reach.ts";

const faces = { ramSideOut: 0.07, gatewayAlong: -0.04 };
const position: Span = { from: -0.3, to: -0.1, step: 0.01 };
const expectSpan = (found: Span | undefined, from: number, to: number, step: number | null) => {
  expect(found?.from).toBeCloseTo(from, 12);
  expect(found?.to).toBeCloseTo(to, 12);
  expect(found?.step).toBe(step);
};

describe("[G13] where a post bracket puts the pin", () => {
  test("a plate on the ram-side face: positions along, stand-offs out", () => {
    const sites = postPinSites(
      { kind: "plate", id: "plate A", face: "ramSide", position, standOffs: [0.06, 0.09] },
      faces,
    );
    expect(sites).toHaveLength(2);
    expectSpan(sites[0]?.along, -0.3, -0.1, 0.01);
    expectSpan(sites[0]?.out, 0.13, 0.13, null);
    expectSpan(sites[1]?.out, 0.16, 0.16, null);
    expect(new Set(sites.map(({ bracket }) => bracket)).size).toBe(2);
    expect(sites[0]?.bracket).toContain("plate A");
  });

  test("a plate on the gateway face: positions out, stand-offs along", () => {
    const [site] = postPinSites(
      {
        kind: "plate",
        id: "plate A",
        face: "gateway",
        position: { from: 0.05, to: 0.2, step: null },
        standOffs: [0.06],
      },
      faces,
    );
    expectSpan(site?.along, 0.02, 0.02, null);
    expectSpan(site?.out, 0.05, 0.2, null);
  });

  test("a slotted bracket: the stand-off anywhere in its slot", () => {
    const [site] = postPinSites(
      { kind: "slotted", id: "slot", face: "ramSide", position, slot: { from: 0.05, to: 0.12, step: null } },
      faces,
    );
    expectSpan(site?.out, 0.12, 0.19, null);
  });

  test("an indexing bracket: the arm's end at each angle that it locks at", () => {
    const angles = [0, Math.PI / 2, Math.PI];
    const bracket = {
      kind: "indexing" as const,
      id: "arm",
      position,
      boltStandOff: 0.05,
      radius: 0.1,
      angles,
    };
    const onRamSide = postPinSites({ ...bracket, face: "ramSide" }, faces);
    expect(onRamSide).toHaveLength(3);
    expectSpan(onRamSide[0]?.along, -0.2, 0, 0.01);
    expectSpan(onRamSide[0]?.out, 0.12, 0.12, null);
    expectSpan(onRamSide[1]?.along, -0.3, -0.1, 0.01);
    expectSpan(onRamSide[1]?.out, 0.22, 0.22, null);
    const onGateway = postPinSites({ ...bracket, face: "gateway" }, faces);
    expectSpan(onGateway[0]?.along, 0.11, 0.11, null);
    expectSpan(onGateway[0]?.out, -0.3, -0.1, 0.01);
    expectSpan(onGateway[2]?.along, -0.09, -0.09, null);
  });

  test("welded: anywhere in its rectangle", () => {
    const along = { from: -0.2, to: -0.1, step: null };
    const out = { from: 0.1, to: 0.2, step: null };
    expect(postPinSites({ kind: "welded", id: "weld", along, out }, faces)).toEqual([
      { bracket: "weld", along, out },
    ]);
  });
});

describe("[G13] where a leaf bracket puts the pin", () => {
  test("each stand-off from the face, on each solid member only", () => {
    const members = [
      { from: 0.8, to: 0.9, step: null },
      { from: 1.2, to: 1.25, step: 0.025 },
    ];
    const sites = leafPinSites({ id: "lug", standOffs: [0.06, 0.1], members }, 0.025);
    expect(sites).toHaveLength(4);
    expectSpan(sites[0]?.off, 0.085, 0.085, null);
    expect(sites.filter(({ along }) => along === members[1])).toHaveLength(2);
  });

  test("any post site goes with any leaf site", () => {
    const span = (from: number, to: number): Span => ({ from, to, step: null });
    const postPin = ["a", "b"].map((bracket) => ({ bracket, along: span(-0.2, -0.1), out: span(0.1, 0.2) }));
    const leafPin = ["c", "d", "e"].map((bracket) => ({ bracket, along: span(0.8, 1), off: span(0.1, 0.1) }));
    const cells = cellsOf({ postPin, leafPin, rise: 0 });
    expect(cells.map(({ postBracket, leafBracket }) => postBracket + leafBracket)).toEqual([
      "ac",
      "ad",
      "ae",
      "bc",
      "bd",
      "be",
    ]);
  });
});
