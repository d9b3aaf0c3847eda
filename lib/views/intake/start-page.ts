import { type Guardian, guardianState } from '#lib/domain/intake/guardian-text.ts';
import {
  isSign,
  TOLD_AT_START,
  type ToldAtStart,
  type ToldHold,
  type ToldWord,
  toldInWords,
} from '#lib/domain/intake/told-at-start.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { momentAsSaid } from '../phone-dates.ts';
import { datedDay } from '../say-date.ts';

export type HoldLine = { told: ToldAtStart; what: string; since: string; isAhead: boolean };
export type WordLine = { key: string; what: string; said: string; words: string };
export type GuardianLine = { id: string; name: string; state: string; agreed: boolean; email: string | null };

/** What waits for a clinician's word: danger signs first, then the health questions, in the order they are asked. */
export function holdLines(holds: readonly ToldHold[], today: string): HoldLine[] {
  return TOLD_AT_START.flatMap((told) => {
    const hold = holds.find((one) => one.told === told);
    if (!hold) return [];
    const isAhead = hold.from > today;
    const rule = isSign(told) ? 'the whole plan' : 'everything upside down';
    return [
      {
        told,
        isAhead,
        what: asSentence(toldInWords(told)),
        since: isAhead
          ? `a word is on record; ${rule} is held again from ${datedDay(hold.from, today)}, unless the next one comes`
          : `${rule} is held since ${datedDay(hold.from, today)}`,
      },
    ];
  });
}

/** Clinicians' words on record, the newest first. */
export function wordLines(words: readonly ToldWord[], today: string): WordLine[] {
  return words.map(({ told, date, clinician, lifts, reviewOn, by, words: text }, index) => ({
    key: `${date} ${told} ${index}`,
    what: asSentence(toldInWords(told)),
    said: [
      `${clinician || 'a clinician'}, ${datedDay(date, today)}: ${lifts ? 'allows it' : 'does not allow it'}`,
      reviewOn ? `looks again by ${datedDay(reviewOn, today)}` : '',
      by ? `recorded by ${by}` : '',
    ]
      .filter(Boolean)
      .join('; '),
    words: text,
  }));
}

/** Parents and guardians with how each stands to it. */
export function guardianLines(guardians: readonly Guardian[], zone: string, now: Date): GuardianLine[] {
  const when = (at: Date | null) => (at ? momentAsSaid(at, zone, now) : '');
  return guardians.map((one) => {
    const state = guardianState(one);
    const link = one.openedAt
      ? `opened the link ${when(one.openedAt)}, has not decided`
      : one.linkAt
        ? `link made ${when(one.linkAt)}, not opened`
        : 'no link made yet';
    const words = {
      asked: link,
      agreed: `agreed ${when(one.agreedAt)}`,
      declined: `said no ${when(one.declinedAt)}`,
      withdrawn: `took the yes back ${when(one.withdrawnAt)}`,
    };
    return { id: one.id, name: one.name, email: one.email, state: words[state], agreed: state === 'agreed' };
  });
}
