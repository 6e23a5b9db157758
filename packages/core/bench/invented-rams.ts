import type { Ram } from "../src/ram/ram.ts";

/** Numbers in [0, 1) from a seed: a 32-bit generator whose state steps by the golden ratio (splitmix32). */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    mixed ^= mixed >>> 15;
    return (mixed >>> 0) / 2 ** 32;
  };
}

/** A catalogue of rams that nobody makes: lengths, strokes and widths drawn from a seed, whole millimetres. */
export function inventedRams(count: number, seed = 2468): Ram[] {
  const next = seededNumbers(seed);
  const millimetres = (from: number, to: number) => Math.round(from + (to - from) * next()) / 1000;
  return Array.from({ length: count }, (_, index) => {
    const stroke = millimetres(250, 600);
    const retracted = stroke + millimetres(250, 450);
    const tube = retracted - millimetres(120, 220);
    const width = millimetres(30, 55);
    const sections =
      next() < 0.5
        ? [{ from: -millimetres(20, 90), to: tube, halfWidth: width }]
        : [
            { from: -millimetres(40, 120), to: tube * 0.4, halfWidth: width * 1.3 },
            { from: tube * 0.4, to: tube, halfWidth: width * 0.8 },
          ];
    return {
      id: `invented-${index + 1}`,
      retracted,
      stroke,
      retractedMargin: 0.01,
      extendedMargin: 0.01,
      tube: sections,
      rodHalfWidth: millimetres(8, 15),
      speed: millimetres(12, 25),
      thrust: 1000 + Math.round(2000 * next()),
      longestLeaf: null,
      heaviestLeaf: null,
    };
  });
}
