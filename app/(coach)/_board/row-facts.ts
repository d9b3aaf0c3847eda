/** What the acts on a row need to know of it. */
export type RowFacts = {
  clientId: string;
  name: string;
  step: string;
  question: { id: string; text: string; stills: string[] } | null;
  needsWords: boolean;
  nextCheckIn: { said: string; exact: string };
};
