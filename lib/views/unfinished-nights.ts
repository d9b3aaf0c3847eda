import { saidDate } from './say-date.ts';

type Unfinished = { localDate: string; clients: number };

/** Nights that were not finished at 06:00, oldest first, as the object of a sentence; empty: there is none. */
export function unfinishedInWords(nights: readonly Unfinished[], today: string): string {
  const said = nights.map(
    ({ localDate, clients }) =>
      `the night of ${saidDate(localDate, today)} for ${clients === 1 ? '1 client' : `${clients} clients`}`,
  );
  const [first = '', second] = said;
  if (said.length > 2) return `${said.length} nights, the oldest ${first}`;
  return second ? `${first} and ${second}` : first;
}
