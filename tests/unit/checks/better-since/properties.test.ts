import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betterSince } from '#lib/checks/better-since/better-since.ts';
import type { Followed, Since } from '#lib/checks/better-since/types.ts';
import { windowsOf } from '#lib/checks/better-since/windows.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { ClientHistory, HistoryCheckIn } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { aPain, day } from '#tests/fixtures/history-builders.ts';
import { anyLife, type Case, told } from '../properties/any-history.ts';
import { mirrored, moved } from '../properties/mirror.ts';
import { shuffled, withLater } from '../properties/order.ts';
import { followable } from './followable.ts';

const RUNS = 60;
const SEED = 20_261_126;
const RANK = { worse: 0, 'not-known': 1, same: 1, better: 2, 'not-yet': 1 } as const;

/** Every kind followed over its first window, ending on the last evening of the client. */
function everyKind({ history, asOf }: Case): { followed: Followed; windowDays: number }[] {
  return followable(history, asOf.date).flatMap((one) => {
    const [windowDays = 0] = windowsOf(one.kind, DEFAULT_LIMITS);
    const from = addDays(asOf.date, -windowDays);
    return from > day(0) ? [{ followed: { ...one, from }, windowDays }] : [];
  });
}

function since(history: ClientHistory, followed: Followed, windowDays: number, today?: string): Since {
  const on = today ?? addDays(followed.from, windowDays);
  const found = betterSince(history, followed, windowDays, on, DEFAULT_LIMITS);
  if (!found) throw new Error(`${followed.kind} is not followed`);
  return found;
}

/** Compared by what decides; words with dates of their own are left out. */
function decided({ outcome, before, after }: Since) {
  return { outcome, before, after };
}

function always(holds: (one: Case) => void): void {
  fc.assert(
    fc.property(anyLife, (life) => holds(told(life))),
    { numRuns: RUNS, seed: SEED },
  );
}

describe('better since, of random clients', () => {
  const seen = new Set<string>();
  it('is the same for rows in any order, a while later, in the mirror, and whichever night asks', () => {
    always((one) => {
      const { history, base, asOf } = one;
      const days = base.seed % 500;
      const [mixed, then] = [shuffled(history, base.seed), moved(history, days)];
      const [mirror, nights] = [mirrored(history), withLater(history, asOf.date, base.seed)];
      for (const { followed, windowDays } of everyKind(one)) {
        const first = since(history, followed, windowDays);
        seen.add(`${followed.kind} ${first.outcome}`);
        expect(since(mixed, followed, windowDays), followed.kind).toEqual(first);
        expect(decided(since(then, moved(followed, days), windowDays)), followed.kind).toEqual(
          decided(first),
        );
        expect(decided(since(mirror, inMirror(followed), windowDays)), followed.kind).toEqual(decided(first));
        const late = since(nights, followed, windowDays, addDays(first.until, 9));
        expect(late, followed.kind).toEqual(first);
      }
    });
    const outcomes = ['better', 'same', 'worse', 'not-known'];
    const missing = outcomes.filter((outcome) => ![...seen].some((each) => each.endsWith(` ${outcome}`)));
    expect(missing).toEqual([]);
  }, 60_000);

  it('is not changed by every check-in told twice, where both are known', () => {
    always((one) => {
      const again = doubled(one.history);
      for (const { followed, windowDays } of everyKind(one)) {
        // A score takes the best sets of a day, a pair its first clean ones: of twice as many these are others.
        if (followed.kind === 'stalled' || followed.kind === 'side-gap') continue;
        const once = since(one.history, followed, windowDays);
        const twice = since(again, followed, windowDays);
        if (once.outcome !== 'not-known') expect(twice.outcome, followed.kind).toBe(once.outcome);
      }
    });
  }, 60_000);

  it('is never better and never worse where nothing changes', () => {
    const steady = steadyClient();
    const outcomes = followable(steady, day(70)).flatMap((followed) =>
      windowsOf(followed.kind, DEFAULT_LIMITS).map((days) => since(steady, followed, days).outcome),
    );
    expect([...new Set(outcomes)]).toEqual(['same']);
  });

  it('never becomes better when what came after the step is worse', () => {
    always((one) => {
      for (const { followed, windowDays } of everyKind(one)) {
        const before = since(one.history, followed, windowDays);
        const worse = since(worseAfter(one.history, followed), followed, windowDays);
        const said = `${followed.kind}: ${before.outcome} (${before.said}) became ${worse.outcome} (${worse.said})`;
        if (before.outcome === 'not-known') expect(worse.outcome, said).not.toBe('better');
        else expect(RANK[worse.outcome], said).toBeLessThanOrEqual(RANK[before.outcome]);
      }
    });
  }, 60_000);
});

function inMirror(followed: Followed): Followed {
  const text = JSON.stringify(followed).replace(/\b(left|right)\b/g, (side) =>
    side === 'left' ? 'right' : 'left',
  );
  return JSON.parse(text) as Followed;
}

function doubled(history: ClientHistory): ClientHistory {
  const again = history.checkIns.map((checkIn) => ({ ...checkIn, id: `${checkIn.id}-again` }));
  return { ...history, checkIns: [...history.checkIns, ...again] };
}

/** After the step: more pain there, more minutes, sets cut to a third, and never a rest told. */
function worseAfter(history: ClientHistory, followed: Followed): ClientHistory {
  const { region, side } = followed.subject;
  const worse = (checkIn: HistoryCheckIn): HistoryCheckIn => ({
    ...checkIn,
    minutes: checkIn.minutes === null ? null : checkIn.minutes * 3,
    ...(followed.kind === 'pain-rising' &&
      region &&
      (checkIn.nothingHurts || checkIn.pain.some((pain) => pain.region === region && pain.side === side)) && {
        nothingHurts: false,
        pain: [...checkIn.pain, aPain(9, { region, side: side as 'left' | 'right' })],
      }),
    ...((followed.kind === 'too-hard' || followed.kind === 'stalled') && {
      sets: checkIn.sets.map((set) => ({ ...set, value: set.value === null ? null : set.value / 3 })),
    }),
  });
  return {
    ...history,
    checkIns: history.checkIns.map((each) => (each.date > followed.from ? worse(each) : each)),
  };
}

/** Twenty weeks of the same three sessions, a little sore on the same days, with all ten ladders. */
function steadyClient(): ClientHistory {
  const { history } = told({ base: { ...STEADY, weeks: 20 }, stories: [] });
  const checkIns = history.checkIns.map((checkIn) => ({
    ...checkIn,
    effort: 5,
    minutes: 60,
    nothingHurts: false,
    pain: [aPain(2)],
    dangerSigns: [{ sign: 'swelling' as const, goneWithinMinute: false, region: null, side: null }],
    sets: checkIn.sets.map((set) => ({
      ...set,
      value: set.side === 'left' ? 7 : 8,
      planned: 9,
      clean: true,
      faults: set.side === 'left' && set.index === 0 ? (['hips-turn'] as const).slice() : [],
    })),
  }));
  return { ...history, checkIns };
}

const STEADY = {
  weeks: 20,
  zone: 'UTC',
  under18: false,
  bodyMassKg: 60,
  toldWeekAu: null,
  perWeek: 3,
  twoSessions: false,
  ladders: 10,
  asked: 0.8,
  reached: 0.9,
  growth: 0,
  effort: 5,
  minutes: 60,
  tellsRest: true,
  seed: 1,
};
