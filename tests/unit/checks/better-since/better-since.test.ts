import { describe, expect, it } from 'vitest';
import { betterSince } from '#lib/checks/better-since/better-since.ts';
import type { Followed } from '#lib/checks/better-since/types.ts';
import { windowsOf } from '#lib/checks/better-since/windows.ts';
import { DEFAULT_LIMITS, limitsWith } from '#lib/checks/thresholds.ts';
import type { ClientHistory, HistoryCheckIn } from '#lib/domain/history.ts';
import { CHECK_KINDS } from '#lib/domain/vocabulary.ts';
import {
  aCheckIn,
  aHistory,
  aPain,
  aPlan,
  aRestDay,
  aRung,
  aSet,
  day,
  sets,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';

const WEEKS = 16;
/** A Sunday: every week before and after is whole. */
const FROM = 69;

function follow(kind: Followed['kind'], over: Partial<Followed> = {}): Followed {
  return { kind, subject: { key: 'client' }, evidence: {}, from: day(FROM), ...over };
}

function since(history: ClientHistory, followed: Followed, windowDays = 14, today = day(WEEKS * 7)) {
  return betterSince(history, followed, windowDays, today, DEFAULT_LIMITS);
}

/** Three sessions a week, the other days told as rest; `make` bends the days after the step. */
function life(make: (days: number) => Partial<HistoryCheckIn>): HistoryCheckIn[] {
  const trained = threeAWeek(WEEKS, (days) => aCheckIn(days, make(days)));
  const taken = new Set(trained.map((each) => each.date));
  const rest = Array.from({ length: WEEKS * 7 }, (_, days) => aRestDay(days)).filter(
    (each) => !taken.has(each.date),
  );
  return [...trained, ...rest];
}

const afterStep = <T>(days: number, then: T, before: T): T => (days > FROM ? then : before);

describe('windows', () => {
  it('are those of the kind; what is owed, good news and plans are not followed', () => {
    const followed = CHECK_KINDS.map((kind) => [kind, windowsOf(kind, DEFAULT_LIMITS)]).filter(
      ([, days]) => days?.length,
    );
    expect(Object.fromEntries(followed)).toEqual({
      'danger-sign': [7, 14, 28],
      'pain-high': [7, 14, 28],
      'pain-rising': [7, 14, 28],
      'pain-lingering': [7, 14, 28],
      'pain-after-ground': [7, 14, 28],
      'load-jump': [14],
      'new-hardest': [14],
      'stacked-stress': [14],
      'no-let-up': [14],
      'too-hard': [14],
      stalled: [28, 42],
      slipping: [28, 42],
      'too-little-time': [28, 42],
      'window-gap': [42, 56],
      'side-gap': [42, 56],
      'one-side-fault': [42, 56],
      'gone-quiet': [14],
      fading: [14],
    });
    expect(since(aHistory(), follow('plan-ending'))).toBeUndefined();
  });
  it('are not yet over before their last evening', () => {
    const history = aHistory({ checkIns: life(() => ({})) });
    expect(since(history, follow('gone-quiet'), 14, day(FROM + 13))?.outcome).toBe('not-yet');
    expect(since(history, follow('gone-quiet'), 14, day(FROM + 14))?.outcome).toBe('same');
  });
});

describe('pain', () => {
  const place = { key: 'elbow-inner:right', region: 'elbow-inner', side: 'right' } as const;
  const sore = (values: (days: number) => number) =>
    aHistory({ checkIns: threeAWeek(WEEKS, (days) => aCheckIn(days, { pain: [aPain(values(days))] })) });
  const judged = (now: number, of = 14) =>
    since(
      sore((days) => afterStep(days, now, 4)),
      follow('pain-rising', { subject: place }),
      of,
    );

  it('is better, the same or worse by a whole point of the median', () => {
    expect(judged(3)).toMatchObject({ outcome: 'better', before: 4, after: 3 });
    expect(judged(4)).toMatchObject({ outcome: 'same' });
    expect(judged(5)).toMatchObject({ outcome: 'worse', before: 4, after: 5 });
    expect(judged(3, 7)?.outcome).toBe('better');
    expect(judged(3)?.said).toBe(
      'median of the worst pain there, in 7 days: before 4 (3 check-ins); at the end 3 (3 check-ins)',
    );
  });
  it('looks at the median, so that one peak before makes nothing better', () => {
    const peak = sore((days) => (days === FROM - 2 ? 8 : 2));
    expect(since(peak, follow('pain-high', { subject: place }))).toMatchObject({
      outcome: 'same',
      before: 2,
      after: 2,
    });
  });
  it('looks at the last 7 days of the window only', () => {
    const later = sore((days) => (days <= FROM ? 4 : days <= FROM + 7 ? 9 : 1));
    expect(since(later, follow('pain-rising', { subject: place }), 14)?.outcome).toBe('better');
    expect(since(later, follow('pain-rising', { subject: place }), 7)?.outcome).toBe('worse');
  });
  it('says how many check-ins it lacks', () => {
    const silent = aHistory({
      checkIns: sore(() => 4).checkIns.filter((each) => each.date <= day(FROM + 8)),
    });
    const found = since(silent, follow('pain-rising', { subject: place }));
    expect(found).toMatchObject({ outcome: 'not-known', before: 4, after: null });
    expect(found?.said).toContain('1 of 2 check-ins that speak of it');
  });
  it('reads 7 days up to the step, not 8', () => {
    const on = (first: number) =>
      aHistory({
        checkIns: [first, FROM, FROM + 9, FROM + 11].map((days) => aCheckIn(days, { pain: [aPain(4)] })),
      });
    const followed = follow('pain-rising', { subject: place });
    expect(since(on(FROM - 6), followed)?.outcome).toBe('same');
    expect(since(on(FROM - 7), followed)?.said).toContain('before not known, 1 of 2 check-ins');
  });
  it('counts the day of the step as before', () => {
    const evening = sore((days) => afterStep(days, 2, 2)).checkIns;
    const withDay = aHistory({
      checkIns: [...evening, aCheckIn(FROM, { pain: [aPain(9)] }), aCheckIn(FROM - 1, { pain: [aPain(9)] })],
    });
    expect(since(withDay, follow('pain-high', { subject: place }))).toMatchObject({ before: 2 });
    const more = aHistory({
      checkIns: [FROM, FROM - 1, FROM + 8, FROM + 9].map((days) =>
        aCheckIn(days, { pain: [aPain(days > FROM ? 1 : 9)] }),
      ),
    });
    expect(since(more, follow('pain-high', { subject: place }))).toMatchObject({
      outcome: 'better',
      before: 9,
      after: 1,
    });
  });
});

it('a danger sign: by the share of check-ins that tell it', () => {
  const sign = { sign: 'swelling', goneWithinMinute: false, region: null, side: null } as const;
  const told = (of: (days: number) => boolean) =>
    aHistory({
      checkIns: threeAWeek(WEEKS, (days) => aCheckIn(days, { dangerSigns: of(days) ? [sign] : [] })),
    });
  const followed = follow('danger-sign', { subject: { key: 'swelling:any:any' } });
  expect(
    since(
      told((days) => days <= FROM),
      followed,
    ),
  ).toMatchObject({ outcome: 'better', before: 1, after: 0 });
  expect(
    since(
      told((days) => days > FROM),
      followed,
    )?.outcome,
  ).toBe('worse');
  expect(
    since(
      told(() => true),
      followed,
    )?.outcome,
  ).toBe('same');
  expect(
    since(
      told(() => true),
      { ...followed, subject: { key: 'weakness:any:any' } },
    ),
  ).toMatchObject({ before: 0 });
});

describe('load', () => {
  const jumped = { evidence: { ratio: 1.8, tissues: '' } };
  const loaded = (minutes: (days: number) => number) =>
    aHistory({ checkIns: life((days) => ({ minutes: minutes(days) })) });
  const jump = (days: number) => days > FROM - 7 && days <= FROM;

  it('is better near the usual week, and no better for less than usual', () => {
    const back = since(
      loaded((days) => (jump(days) ? 110 : 60)),
      follow('load-jump', jumped),
    );
    expect(back).toMatchObject({ outcome: 'better', after: 1 });
    expect(back?.before).toBeCloseTo(110 / 60, 3);
    const none = since(
      loaded((days) => afterStep(days, 10, 60)),
      follow('load-jump', jumped),
    );
    expect(none).toMatchObject({ outcome: 'same', before: 1, after: 1 });
  });
  it('is worse by at least 0.15 of the usual week before', () => {
    expect(
      since(
        loaded((days) => afterStep(days, 69, 60)),
        follow('load-jump', jumped),
      )?.outcome,
    ).toBe('worse');
    expect(
      since(
        loaded((days) => afterStep(days, 68, 60)),
        follow('load-jump', jumped),
      )?.outcome,
    ).toBe('same');
  });
  it('says better only with all 7 days known, worse already with some', () => {
    const gap = (history: ClientHistory) => ({
      ...history,
      checkIns: history.checkIns.filter((each) => each.date <= day(FROM + 8) || each.date > day(FROM + 14)),
    });
    expect(since(gap(loaded((days) => (jump(days) ? 110 : 60))), follow('load-jump', jumped))?.outcome).toBe(
      'not-known',
    );
    expect(since(gap(loaded((days) => afterStep(days, 400, 60))), follow('load-jump', jumped))?.outcome).toBe(
      'worse',
    );
  });
  it('is about the tissue where the session load was not over', () => {
    const more = aHistory({
      checkIns: life((days) => ({ sets: sets(Array.from({ length: jump(days) ? 6 : 3 }, () => 5)) })),
    });
    const found = since(
      more,
      follow('load-jump', { evidence: { ratio: 1, tissues: 'elbow-bending:right' } }),
    );
    expect(found).toMatchObject({ outcome: 'better', before: 2, after: 1 });
    expect(found?.what).toContain('right');
  });
  it('needs a usual week', () => {
    const short = { ...loaded(() => 60) };
    short.checkIns = short.checkIns.filter((each) => each.date > day(FROM - 20));
    expect(since(short, follow('load-jump', jumped))?.said).toContain('of 4 ordinary weeks known');
  });
});

it('no let-up: days of rest in the window against as many before', () => {
  const daily = (from: number, to: number) =>
    Array.from({ length: to - from }, (_, at) => aCheckIn(from + at));
  const eased = aHistory({
    checkIns: [
      ...daily(FROM - 20, FROM + 1),
      ...daily(FROM + 1, FROM + 13),
      aRestDay(FROM + 13),
      aRestDay(FROM + 14),
    ],
  });
  expect(since(eased, follow('no-let-up'))).toMatchObject({ outcome: 'better', before: 0, after: 2 });
  const never = aHistory({ checkIns: daily(FROM - 20, FROM + 15) });
  expect(since(never, follow('no-let-up'))?.outcome).toBe('same');
  const silent = aHistory({ checkIns: daily(FROM - 20, FROM + 3) });
  expect(since(silent, follow('no-let-up'))?.outcome).toBe('not-known');
});

it('too hard: the share of broken sets on the ladder, also on the rung the client went back to', () => {
  const easier = aRung({ id: 'pull-0', position: 0, name: 'Assisted pull-up' });
  const broken = sets([3, 3, 5]);
  const back = aHistory({
    rungs: [easier, aRung()],
    checkIns: life((days) => ({ sets: afterStep(days, sets([5, 5, 5], { rungId: 'pull-0' }), broken) })),
  });
  const followed = follow('too-hard', { subject: { key: 'pull', ladderId: 'pull', rungId: 'pull-1' } });
  expect(since(back, followed)).toMatchObject({ outcome: 'better', after: 0 });
  expect(since(aHistory({ checkIns: life(() => ({ sets: broken })) }), followed)?.outcome).toBe('same');
  const worse = aHistory({ checkIns: life((days) => ({ sets: afterStep(days, sets([1, 1, 1]), broken) })) });
  expect(since(worse, followed)).toMatchObject({ outcome: 'worse', after: 1 });
  const once = aHistory({
    checkIns: life((days) => ({ sets: afterStep(days, days === FROM + 1 ? broken : [], broken) })),
  });
  expect(since(once, followed)).toMatchObject({ outcome: 'not-known' });
});

it('gone quiet: days with a check-in; days off are left out', () => {
  const told = (of: (days: number) => boolean, absences: ClientHistory['absences'] = []) =>
    aHistory({
      absences,
      checkIns: threeAWeek(WEEKS, (days) => aCheckIn(days)).filter((_, at) =>
        of(Math.floor(at / 3) * 7 + (at % 3) * 2),
      ),
    });
  const quiet = (days: number) => days > FROM - 14 && days <= FROM;
  expect(
    since(
      told((days) => !quiet(days)),
      follow('gone-quiet'),
    ),
  ).toMatchObject({ outcome: 'better', before: 0, after: 6 });
  expect(
    since(
      told((days) => days <= FROM),
      follow('gone-quiet'),
    ),
  ).toMatchObject({ outcome: 'worse', after: 0 });
  const away = [{ from: day(FROM + 1), to: day(FROM + 7), kind: 'holiday' as const }];
  const holiday = since(
    told((days) => days <= FROM || days > FROM + 7, away),
    follow('fading'),
  );
  expect(holiday).toMatchObject({ outcome: 'same', before: 6, after: 6 });
  expect(holiday?.changes).toEqual(['away (holiday) Mon 11 May to Sun 17 May']);
  const longer = [{ from: day(FROM + 1), to: day(FROM + 9), kind: 'holiday' as const }];
  expect(
    since(
      told((days) => days <= FROM || days > FROM + 9, longer),
      follow('fading'),
    )?.outcome,
  ).toBe('not-known');
});

describe('stalled', () => {
  const next = aRung({ id: 'pull-2', position: 2, name: 'Pull-up, weighted' });
  const followed = follow('stalled', {
    subject: { key: 'pull', ladderId: 'pull', rungId: 'pull-1', side: 'both' },
  });
  const done = (then: number[], over: Partial<ClientHistory> = {}) =>
    aHistory({
      rungs: [aRung(), next],
      checkIns: life((days) => ({ sets: afterStep(days, sets(then), sets([4, 4, 4])) })),
      ...over,
    });
  it('by the median share of the pass mark', () => {
    expect(since(done([5, 5, 4]), followed, 28)).toMatchObject({ outcome: 'better', before: 0.8 });
    expect(since(done([4, 4, 4]), followed, 28)?.outcome).toBe('same');
    expect(since(done([4, 4, 3]), followed, 28)?.outcome).toBe('worse');
  });
  it('is better when the rung was passed', () => {
    const placements = [
      ...done([4]).placements,
      { ladderId: 'pull', side: 'both' as const, rungId: 'pull-2', from: day(FROM + 20) },
    ];
    const found = since(done([4, 4, 4], { placements }), followed, 28);
    expect(found?.outcome).toBe('better');
    expect(found?.said).toBe('the rung was passed: on Pull-up, weighted by then');
  });
  it('is not known on another rung, whatever the scores there', () => {
    const easier = aRung({ id: 'pull-0', position: 0, name: 'Assisted' });
    const back = done([4, 4, 4], {
      rungs: [easier, aRung(), next],
      checkIns: life((days) => ({
        sets: afterStep(days, sets([5, 5, 5], { rungId: 'pull-0' }), sets([4, 4, 4])),
      })),
      placements: [
        ...done([4]).placements,
        { ladderId: 'pull', side: 'both', rungId: 'pull-0', from: day(FROM + 1) },
      ],
    });
    const found = since(back, followed, 28);
    expect(found?.outcome).toBe('not-known');
    expect(found?.said).toContain('0 of 3 training days of this rung');
  });
  it('does not count the day of the step among the scores since', () => {
    const all = done([4, 4, 4]).checkIns;
    const days = (count: number) => [
      ...all.filter((each) => each.date < day(FROM - 1)),
      aCheckIn(FROM, { sets: sets([4, 4, 4]) }),
      ...Array.from({ length: count }, (_, at) => aCheckIn(FROM + 9 + at, { sets: sets([4, 4, 4]) })),
    ];
    expect(since(done([4], { checkIns: days(3) }), followed, 28)?.outcome).toBe('same');
    const limits = limitsWith({ 'betterSince.scoreDays': 29 });
    const two = done([4], { checkIns: days(2) });
    expect(betterSince(two, followed, 28, day(FROM + 28), limits)?.outcome).toBe('not-known');
  });
  it('needs three scores of the last 21 days', () => {
    const rare = done([5, 5, 5]);
    const checkIns = rare.checkIns.filter((each) => each.date <= day(FROM) || each.date > day(FROM + 24));
    expect(since({ ...rare, checkIns }, followed, 28)?.outcome).toBe('not-known');
  });
});

it('too little time: the share of the logged sessions with it in the plan', () => {
  const other = aRung({ id: 'dip-1', ladderId: 'dip', name: 'Dip' });
  const trained = (days: number, share: number) =>
    Math.floor(days / 2) % 10 < share * 10 ? sets([5, 5, 5]) : sets([5, 5], { rungId: 'dip-1' });
  const history = (then: number) =>
    aHistory({
      rungs: [aRung(), other],
      plans: [
        aPlan({
          items: [...aPlan().items, { ...(aPlan().items[0] as never as object), rungId: 'dip-1' } as never],
        }),
      ],
      checkIns: life((days) => ({ sets: trained(days, afterStep(days, then, 0.3)) })),
    });
  const followed = follow('too-little-time', {
    subject: { key: 'pull', ladderId: 'pull', rungId: 'pull-1', side: 'both' },
  });
  expect(since(history(1), followed, 28)).toMatchObject({ outcome: 'better', after: 1 });
  expect(since(history(0), followed, 28)).toMatchObject({ outcome: 'worse', after: 0 });
});

describe('one side', () => {
  const rung = aRung({
    id: 'arm',
    ladderId: 'arm',
    measure: 'hold',
    eachSide: true,
    pass: { sets: 1, target: 20, days: 2, tries: null },
  });
  const pair = (left: number, right: number, faults: [boolean, boolean] = [false, false]) => [
    aSet({ rungId: 'arm', side: 'left', planned: 20, value: left, faults: faults[0] ? ['came-off'] : [] }),
    aSet({ rungId: 'arm', side: 'right', planned: 20, value: right, faults: faults[1] ? ['came-off'] : [] }),
  ];
  const subject = { key: 'arm', ladderId: 'arm', rungId: 'arm', side: 'left' } as const;
  const of = (then: ReturnType<typeof pair>, before = pair(12, 15)) =>
    aHistory({
      rungs: [rung],
      plans: [],
      placements: [],
      checkIns: life((days) => ({ sets: afterStep(days, then, before) })),
    });
  it('by the median gap, whichever side is behind', () => {
    const followed = follow('side-gap', { subject });
    expect(since(of(pair(15, 15.5)), followed, 42)).toMatchObject({ outcome: 'better', before: 20 });
    expect(since(of(pair(12, 15)), followed, 42)?.outcome).toBe('same');
    expect(since(of(pair(9, 15)), followed, 42)?.outcome).toBe('worse');
    expect(since(of(pair(15, 12)), followed, 42)?.outcome).toBe('same');
    expect(since(of([]), followed, 42)?.said).toContain('0 of 4 pairs');
  });
  it('by how much more often the fault comes on one side', () => {
    const followed = follow('one-side-fault', { subject, evidence: { fault: 'came-off', side: 'left' } });
    const fault = pair(12, 15, [true, false]);
    expect(since(of(pair(12, 15), fault), followed, 42)).toMatchObject({
      outcome: 'better',
      before: 100,
      after: 0,
    });
    expect(since(of(pair(12, 15, [false, true]), fault), followed, 42)?.outcome).toBe('same');
    expect(since(of(fault, pair(12, 15)), followed, 42)?.outcome).toBe('worse');
    expect(since(of([], fault), followed, 42)?.said).toContain('0 and 0 of 8 sets');
  });
});

it('balance window: by how far the medians of the best holds are apart', () => {
  const heel = aRung({
    id: 'heel',
    ladderId: 'heel',
    ladder: 'Heel pull',
    part: 'Over-balance',
    measure: 'hold',
    name: 'Heel pull, short',
  });
  const toe = aRung({
    id: 'toe',
    ladderId: 'toe',
    ladder: 'Toe pull',
    part: 'Under-balance',
    measure: 'hold',
    name: 'Toe pull, short',
  });
  const held = (toes: number) => [aSet({ rungId: 'heel', value: 20 }), aSet({ rungId: 'toe', value: toes })];
  const history = (then: number) =>
    aHistory({
      rungs: [heel, toe],
      plans: [],
      placements: [],
      checkIns: life((days) => ({ sets: held(afterStep(days, then, 10)) })),
    });
  const followed = follow('window-gap', { subject: { key: 'window:short' } });
  expect(since(history(18), followed, 42)).toMatchObject({ outcome: 'better', before: 50, after: 10 });
  expect(since(history(10), followed, 42)?.outcome).toBe('same');
  expect(since(history(5), followed, 42)?.outcome).toBe('worse');
  expect(since(history(18), { ...followed, subject: { key: 'window:long' } }, 42)?.outcome).toBe('not-known');
});

describe('two changes at once', () => {
  const base = aHistory({ checkIns: life(() => ({})) });
  const step = {
    kind: 'hold',
    takenOn: day(FROM),
    ladderId: 'pull',
    side: null,
    reviewOn: null,
    words: 'Held',
  };
  const own = { kind: 'hold', ladderId: 'pull', side: null, planVersions: [2], setLimit: true };
  it('are said from 7 days before the step to the end of the window', () => {
    const at = (days: number) => ({ ...aPlan(), version: days, from: day(FROM + days) });
    const history = { ...base, plans: [at(-8), at(-7), at(14), at(15)] };
    expect(since(history, follow('fading'))?.changes).toEqual([
      'plan version -7 from Sun 3 May',
      'plan version 14 from Sun 24 May',
    ]);
  });
  it('are never what the step itself wrote', () => {
    const limit = {
      tissue: null,
      region: null,
      side: null,
      rule: 'none' as const,
      percent: null,
      who: 'Coach',
    };
    const history = {
      ...base,
      steps: [step, { ...step, takenOn: day(FROM + 3), words: 'Film asked for' }],
      plans: [
        aPlan(),
        { ...aPlan(), version: 2, from: day(FROM) },
        { ...aPlan(), version: 3, from: day(FROM + 5) },
      ],
      limits: [
        { ...limit, from: day(FROM), until: day(FROM + 9) },
        { ...limit, tissue: 'neck' as const, from: day(FROM + 1), until: null },
      ],
    };
    expect(since(history, follow('fading', { step: own }))?.changes).toEqual([
      'a limit for neck from Mon 11 May',
      'another step on Wed 13 May: Film asked for',
      'plan version 3 from Fri 15 May',
      'the limit for all work ended Tue 19 May',
    ]);
    expect(since(history, follow('fading'))?.changes).toHaveLength(7);
    const byHand = { ...own, planVersions: [] };
    expect(since(history, follow('fading', { step: byHand }))?.changes).not.toContain(
      'plan version 2 from Sun 10 May',
    );
  });
});
