/** Time limit of a test with many random runs: no measure of speed, only an end for one that hangs. */
export const unhurried = 120_000;
