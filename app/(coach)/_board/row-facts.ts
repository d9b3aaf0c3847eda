/** What the acts on a row need to know of it. */
export type RowFacts = {
  clientId: string;
  name: string;
  step: string;
  /** Waiting questions, oldest first. */
  questions: { id: string; text: string; stills: string[] }[];
  needsWords: boolean;
  nextCheckIn: { said: string; exact: string };
};
