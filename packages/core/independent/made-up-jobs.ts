import type { Reach, Situation, Span } from "../src/index.ts";
import type { BruteJob, Polygon } from "./brute-reserve.ts";
import { seededRandom } from "./seeded-random.ts";

/** Where one choice of brackets lets the four pin numbers go [mm]; a step of 0 means anywhere between. */
export interface Ranges {
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly step: readonly number[];
}

/** One made-up job, told twice: as the core takes it, and as the brute force takes it. */
export interface MadeUpJob {
  readonly name: string;
  readonly situation: Situation;
  readonly reach: Reach;
  readonly brute: BruteJob;
  /** Every pair of bracket choices. */
  readonly choices: readonly Ranges[];
}

const rectangle = (x0: number, y0: number, x1: number, y1: number): Polygon => [
  x0,
  y0,
  x1,
  y0,
  x1,
  y1,
  x0,
  y1,
];

/** Least and greatest pin-to-pin length and least lever over the travel [mm], by sampling. */
function travelOf(pins: readonly number[], rise: number, toward: boolean, openDeg: number) {
  const [px, py, d, e] = pins as [number, number, number, number];
  let [shortest, longest, lever] = [Infinity, 0, Infinity];
  for (let i = 0; i <= 90; i++) {
    const turn = ((toward ? 1 : -1) * openDeg * Math.PI * i) / 180 / 90;
    const [bx, by] = [d * Math.cos(turn) - e * Math.sin(turn), d * Math.sin(turn) + e * Math.cos(turn)];
    const length = Math.hypot(bx - px, by - py, rise);
    shortest = Math.min(shortest, length);
    longest = Math.max(longest, length);
    lever = Math.min(lever, Math.abs(px * by - py * bx) / length);
  }
  return { shortest, longest, lever };
}

/**
 * A made-up gate of everyday size with a ram that about fits it. `kind`: "free" pins anywhere in a box,
 * "stepped" brackets with holes at steps and fixed stand-offs on both sides, "mixed" a stepped post bracket
 * and a leaf bracket that slides. Some rams are far too short, so that nothing fits.
 */
export function madeUpJob(seed: number, kind: "free" | "stepped" | "mixed"): MadeUpJob {
  const random = seededRandom(seed * 7919 + 17);
  const between = (from: number, to: number) => Math.round(from + (to - from) * random());
  const toward = random() < 0.6;
  const openDeg = toward ? between(80, 112) : between(75, 95);
  const base = toward
    ? [between(-240, -110), between(110, 220), between(700, 1100), between(70, 130)]
    : [between(-30, 60), between(200, 300), between(700, 1000), between(120, 200)];
  const rise = random() < 0.3 ? between(-150, 150) : 0;
  const [heel, length, thickness, face] = [
    between(20, 60),
    between(2000, 4200),
    between(40, 60),
    between(10, 40),
  ];
  const { shortest, longest, lever } = travelOf(base, rise, toward, openDeg);
  const tooShort = random() < 0.12;
  const retracted = Math.round(shortest - between(5, 45));
  const stroke = tooShort
    ? Math.round(0.6 * (longest - shortest))
    : Math.round(longest - retracted + between(5, 70));
  const half = between(22, 38);
  const tube = [{ from: -between(20, 70), to: Math.round(retracted * (0.6 + 0.15 * random())), half }];
  if (random() < 0.4) tube.push({ from: -20, to: 150, half: half + 12 });
  const rail = random() < 0.3 ? rectangle(300, face, 1600, face + 12) : null;
  const pierFace = toward ? between(-20, 40) : between(-10, 60);
  const pierAt = -between(70, 110);
  const deep = random() < 0.4;
  const pier = random() < 0.5 ? [rectangle(pierAt - 400, -360, pierAt, pierFace)] : [];
  // A buttress makes the pier hollow in outline: an L, which the brute force takes as two rectangles.
  if (deep && pier.length > 0) pier.push(rectangle(pierAt - 400, pierFace, pierAt - 240, pierFace + 160));
  const brute: BruteJob = {
    toward,
    openDeg,
    leaf: [rectangle(heel, face - thickness, length, face), ...(rail === null ? [] : [rail])],
    tube,
    rodHalf: 9,
    shortest: retracted,
    longest: retracted + stroke,
    fixed: pier.length > 0 ? [pier] : [],
    rise,
    clearance: between(8, 40),
    fixedClearance: 10,
    lever: Math.round(lever * (0.6 + 0.25 * random())),
    deadCentreDeg: 4,
  };
  const wide = [between(20, 90), between(20, 90), between(40, 260), between(5, 40)];
  const choices: Ranges[] = [];
  const [b0, b1, b2, b3] = base as [number, number, number, number];
  const [w0, , w2] = wide as [number, number, number, number];
  for (const standOff of kind === "free" ? [0] : [-25, 20]) {
    for (const leafStandOff of kind === "free" ? [0] : [-12, 15]) {
      const stepped = kind === "stepped";
      const count = Math.floor((2 * w2) / 25);
      choices.push(
        kind === "free"
          ? {
              low: base.map((value, j) => value - (wide[j] as number)),
              high: base.map((value, j) => value + (wide[j] as number)),
              step: [0, 0, 0, 0],
            }
          : {
              low: [b0 - w0, b1 + standOff, b2 - w2, b3 + leafStandOff],
              high: [
                b0 - w0 + 15 * Math.floor((2 * w0) / 15),
                b1 + standOff,
                stepped ? b2 - w2 + 25 * count : b2 + w2,
                b3 + leafStandOff,
              ],
              step: [15, 0, stepped ? 25 : 0, 0],
            },
      );
    }
  }
  const metres = (mm: number) => mm / 1000;
  const span = ({ low, high, step }: Ranges, j: number): Span => ({
    from: metres(low[j] as number),
    // Beyond the last step by a third of one: it must not be used.
    to: metres((high[j] as number) + (step[j] as number) / 3),
    step: step[j] === 0 ? null : metres(step[j] as number),
  });
  const outline = (polygon: Polygon) =>
    Array.from({ length: polygon.length / 2 }, (_, i) => ({
      x: metres(polygon[2 * i] as number),
      y: metres(polygon[2 * i + 1] as number),
    }));
  const hollow = [
    [pierAt - 400, -360],
    [pierAt, -360],
    [pierAt, pierFace],
    [pierAt - 240, pierFace],
    [pierAt - 240, pierFace + 160],
    [pierAt - 400, pierFace + 160],
  ].flat();
  const posts = kind === "free" ? choices : [choices[0], choices[2]];
  const leaves = kind === "free" ? choices : [choices[0], choices[1]];
  return {
    name: `job ${seed} (${kind}, ${toward ? "toward" : "away"}${pier.length > 0 ? ", pier" : ""}${rise === 0 ? "" : ", rise"})`,
    brute,
    choices,
    reach: {
      postPin: posts.map((c) => ({
        bracket: "post",
        along: span(c as Ranges, 0),
        out: span(c as Ranges, 1),
      })),
      leafPin: leaves.map((c) => ({
        bracket: "leaf",
        along: span(c as Ranges, 2),
        off: span(c as Ranges, 3),
      })),
      rise: metres(rise),
    },
    situation: {
      leaf: {
        heel: metres(heel),
        length: metres(length),
        thickness: metres(thickness),
        face: metres(face),
        boxes:
          rail === null
            ? []
            : [{ alongFrom: 0.3, alongTo: 1.6, offFrom: metres(face), offTo: metres(face + 12) }],
        travel: { swing: toward ? "toward" : "away", openAngle: (openDeg * Math.PI) / 180 },
      },
      ram: {
        id: "made-up ram",
        retracted: metres(retracted),
        stroke: metres(stroke),
        retractedMargin: 0,
        extendedMargin: 0,
        tube: tube.map((t) => ({ from: metres(t.from), to: metres(t.to), halfWidth: metres(t.half) })),
        rodHalfWidth: metres(9),
        speed: null,
        thrust: null,
        longestLeaf: null,
        heaviestLeaf: null,
      },
      fixed:
        pier.length === 0
          ? []
          : [{ name: "pier", outline: outline(pier.length > 1 ? hollow : (pier[0] as Polygon)) }],
      need: {
        clearance: metres(brute.clearance),
        fixedClearance: metres(brute.fixedClearance),
        lever: metres(brute.lever),
        deadCentre: (brute.deadCentreDeg * Math.PI) / 180,
        // The leaf's own sweep is no matter of pins; it is checked elsewhere.
        sweep: -10,
      },
    },
  };
}
