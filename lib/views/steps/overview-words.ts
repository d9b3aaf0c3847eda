import { type Counted, countsSaid } from './count-outcomes.ts';
import type { StepsOverview } from './steps-overview.ts';

/** The answer to "did it help?" in a few plain sentences, with every count. Never says that it did. */
export function overviewInWords({ taken, alone, clients, besides }: StepsOverview): string[] {
  if (taken.n === 0 && alone.n === 0) return [];
  return [
    taken.n === 0
      ? 'No step that is followed was taken in these days.'
      : `${counted(taken.n, 'step')} of ${counted(clients, 'client')} ${taken.n === 1 ? 'is' : 'are'} followed. Since then, at the end of the longest window that is over: ${counts(taken)}.`,
    alone.n === 0
      ? 'No reason that was left alone has an answer yet, so there is nothing to hold this against.'
      : `Nothing was done about ${counted(alone.n, 'reason')} of the same days: ${counts(alone)}.`,
    ...(besides > 0
      ? [
          `In the weeks of ${besides} of the answered steps something else changed too, so it cannot be told apart.`,
        ]
      : []),
  ];
}

function counts(all: Counted): string {
  const said = countsSaid(all);
  const rest = [
    all['not-known'] > 0 ? `not known ${all['not-known']}` : '',
    all['not-yet'] > 0 ? `not yet over ${all['not-yet']}` : '',
  ].filter((part) => part !== '');
  return [
    `better ${inBrackets(said.better)}`,
    `the same ${inBrackets(said.same)}`,
    `worse ${inBrackets(said.worse)}`,
    ...rest,
  ].join(', ');
}

/** "6, 43 %" as "6 (43 %)", where commas part the counts. */
function inBrackets(said: string): string {
  const [count = '', share] = said.split(', ');
  return share === undefined ? count : `${count} (${share})`;
}

function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}

/** Why none of it proves anything. Said once on the page. */
export const NO_TRIAL =
  'Most extremes fall by themselves: a step is taken when something is at its worst, and a fortnight later it is mostly less bad, whatever was done. In our own simulation of clients whose coach did nothing, 75\u00a0% of the pain reasons were better within 14 days. That is why the same figure for reasons about which nothing was done stands beside it. Even so this is no trial: nobody drew lots for who gets a step, and steps go to those who are worse off. It says better since, not better because.';
