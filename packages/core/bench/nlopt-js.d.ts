// The part of nlopt-js that the benchmark uses; the package brings no types.
declare module "nlopt-js" {
  class Optimize {
    constructor(algorithm: unknown, dimensions: number);
    setMaxObjective(objective: (x: ArrayLike<number>, gradient: unknown) => number, tolerance: number): void;
    setLowerBounds(low: readonly number[]): void;
    setUpperBounds(high: readonly number[]): void;
    setMaxeval(count: number): void;
    setMaxtime(seconds: number): void;
    optimize(start: readonly number[]): {
      readonly x: number[];
      readonly value: number;
      readonly success: boolean;
    };
  }
  const nlopt: {
    readonly ready: Promise<void>;
    readonly Optimize: typeof Optimize;
    readonly Algorithm: Readonly<Record<string, unknown>>;
    readonly GC: { flush(): void };
  };
  export default nlopt;
}
