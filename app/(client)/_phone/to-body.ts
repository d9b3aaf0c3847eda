import type { HistoryCheckIn, HistoryPain, HistorySet } from '#lib/domain/history.ts';
import type { PhoneSession } from '#lib/views/phone-session.ts';
import { type Draft, type PlaceDraft, setKey } from './draft.ts';
import { plannedOf } from './set-acts.ts';

/** What POST /api/check-ins takes. */
export type Body = Omit<HistoryCheckIn, 'sets'> & {
  planVersion: number | null;
  startedAt: string;
  question: string | null;
  correctsId: string | null;
  sets: HistorySet[];
  confirmed: string[];
};

/** The draft as it goes out. Sets nobody said anything about are left out: they are unknown, not done as planned. */
export function toBody(draft: Draft, session: PhoneSession | null, sentAt: Date): Body {
  return {
    id: draft.id,
    date: draft.date,
    zone: draft.zone,
    kind: draft.kind,
    session: draft.session,
    planVersion: draft.planVersion,
    startedAt: draft.startedAt,
    sentAt: sentAt.toISOString(),
    effort: draft.effort,
    minutes: draft.minutes,
    ground: draft.ground,
    sleepHours: draft.sleepHours,
    nothingHurts: draft.nothingHurts,
    sets: setsOf(draft, session),
    pain: draft.places.flatMap((place) => scoresOf(place)),
    dangerSigns: draft.signs.map(({ sign, gone, region, side }) => ({
      sign,
      goneWithinMinute: gone,
      region,
      side,
    })),
    words: draft.words,
    question: draft.question.trim() || null,
    correctsId: draft.correctsId,
    // The phone shows every value and asks again beside a long hold, so what is sent was meant.
    confirmed: longHold(draft) ? ['long-hold'] : [],
  };
}

function setsOf(draft: Draft, session: PhoneSession | null): HistorySet[] {
  const planned = plannedOf(session);
  const support = new Map<string, HistorySet['support']>();
  for (const drill of session?.drills ?? []) {
    for (const { rungId, side } of drill.sides) support.set(setKey(rungId, side), drill.support);
  }
  return Object.entries(draft.sets).flatMap(([key, sets]) => {
    const [rungId = '', side = 'both'] = key.split(' ') as [string, HistorySet['side']];
    return sets.flatMap((set, at): HistorySet[] => {
      if (set.how === 'open') return [];
      return [
        {
          rungId,
          side,
          index: at + 1,
          planned: set.how === 'as-planned' ? set.value : (planned.get(key)?.[at]?.target ?? null),
          value: set.value,
          tried: set.tried,
          how: set.how,
          clean: set.faults.length === 0 && set.how !== 'not-done',
          faults: set.faults,
          support: support.get(key) ?? null,
          addedKg: null,
        },
      ];
    });
  });
}

function scoresOf(place: PlaceDraft): HistoryPain[] {
  const { region, side, kind, usual } = place;
  if (kind === null || region === null) return [];
  return Object.entries(place.scores).map(([moment, value]) => ({
    region,
    side,
    moment: moment as HistoryPain['moment'],
    value,
    kind,
    usual,
  }));
}

const LONG_HOLD_S = 600;

function longHold(draft: Draft): boolean {
  return Object.values(draft.sets).some((sets) => sets.some((set) => (set.value ?? 0) > LONG_HOLD_S));
}
