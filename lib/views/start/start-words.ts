import { longDate } from '../say-date.ts';

type Told = {
  startsAs: 'new' | 'back-as-new' | 'known';
  toldWeekAu: number | null;
  asked: { placedOn: string | null; askedOn: string; by: string; answered: number; left: number } | null;
};

/** Where the start stands, in one or two sentences. */
export function startLead({ startsAs, toldWeekAu, asked }: Told): string {
  const who =
    startsAs === 'back-as-new'
      ? 'Back after 12 weeks or more: starts as new, the history is kept.'
      : startsAs === 'new'
        ? 'In the first weeks here.'
        : 'Trains here already; tests can place on more ladders.';
  const week =
    toldWeekAu === null
      ? 'No usual week was told at the start.'
      : `Usual week told at the start: ${Math.round(toldWeekAu)} AU${startsAs === 'known' ? '' : ', the ceiling of weeks 1 to 4'}.`;
  if (!asked) return `${who} ${week} No start tests are asked.`;
  if (asked.placedOn) return `${who} ${week} Placed on ${longDate(asked.placedOn)}.`;
  const left = asked.left === 0 ? 'nothing left to do' : `${asked.left} to go`;
  return `${who} ${week} Start tests asked on ${longDate(asked.askedOn)} by ${asked.by}: ${asked.answered} answered, ${left}.`;
}
