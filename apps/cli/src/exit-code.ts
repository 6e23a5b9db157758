/** What the command says to the shell (rule I15). */
export const exitCode = { nothingFails: 0, limitFails: 1, badInput: 2 } as const;

export type ExitCode = (typeof exitCode)[keyof typeof exitCode];

/** Of several outcomes the gravest: bad input over a failing limit over a pass. */
export function gravest(codes: readonly ExitCode[]): ExitCode {
  return codes.reduce<number>((worst, code) => Math.max(worst, code), exitCode.nothingFails) as ExitCode;
}
