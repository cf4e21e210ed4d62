/** What does the command's end say to the shell? */
export const EXIT = {
  answered: 0,
  ourFault: 1,
  refused: 2,
  /** A safety refusal stands on a part or work that the build has chosen. */
  safetyRefusal: 3,
} as const;
