/** What every report says at its end: what a calculation is not, and who decides. */
export const cautions: readonly string[] = [
  "A moving gate can crush a hand, a child, an animal; its wiring can shock. Isolate it before you work on it.",
  "What stands here is a prediction, not a proof: measure the finished gate. Local code decides, and the licensed electrician or engineer it calls for.",
];
