import { describe, expect, it } from 'vitest';
import { newDraft, setKey } from '#app/(client)/_phone/draft.ts';
import { ALL_THE_SAME, changeSwap, swapsTaken, withSwaps } from '#app/(client)/_phone/swaps.ts';
import { toBody } from '#app/(client)/_phone/to-body.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { phoneForm } from '#lib/views/phone-form.ts';
import { limitSession, limitsInWords, type UnderLimits } from '#lib/views/phone-limits.ts';
import { type PhoneSession, phoneSession } from '#lib/views/phone-session.ts';
import { aRung } from '#tests/fixtures/history-builders.ts';

const DATE = '2026-11-25';
const STAND = aRung({
  id: 'stand',
  ladderId: 'stand',
  name: 'Wall handstand',
  measure: 'hold',
  eachSide: true,
  weights: { 'wrist-back': 0.9 },
});
const LEAN = aRung({
  id: 'lean',
  ladderId: 'lean',
  name: 'box lean',
  measure: 'hold',
  pass: { sets: 3, target: 40, days: 2, tries: null },
  weights: { 'wrist-back': 0.2 },
});
const HEAVY = aRung({ id: 'heavy', name: 'Heavy lean', weights: { 'wrist-back': 0.4 } });
const PULL = aRung({ id: 'pull' });
const RUNGS = new Map([STAND, LEAN, HEAVY, PULL].map((rung) => [rung.id, rung]));

function limit(over: Partial<HistoryLimit> = {}): HistoryLimit {
  return {
    tissue: 'wrist-back',
    region: null,
    side: null,
    rule: 'none',
    percent: null,
    from: '2026-11-20',
    until: '2026-12-11',
    who: 'physiotherapist',
    ...over,
  };
}
const swap = (insteadId: string, support: UnderLimits['swaps'][number]['support'] = null) => ({
  rungId: 'stand',
  insteadId,
  support,
  tissue: 'wrist-back' as const,
});
const under = (limits: HistoryLimit[], swaps = [swap('heavy'), swap('stand', 'fists'), swap('lean')]) => ({
  date: DATE,
  limits,
  rungs: RUNGS,
  swaps,
});

function session(): PhoneSession {
  const line = (id: string, rung: typeof STAND, side: 'both' | 'left' | 'right') => ({
    id: `${id} ${side}`,
    rungId: rung.id,
    rung: rung.name,
    ladderId: rung.ladderId,
    ladder: rung.ladder,
    measure: rung.measure,
    eachSide: rung.eachSide,
    faults: rung.faults,
    passTarget: rung.pass.target,
    passTries: null,
    side,
    sets: 4,
    target: 20,
    minutes: null,
    support: null,
    stopRule: '',
  });
  const items = [line('one', STAND, 'left'), line('one', STAND, 'right'), line('two', PULL, 'both')];
  return phoneSession(
    { label: 'A', minutes: 45, warmUp: '', items } as Parameters<typeof phoneSession>[0],
    [],
  );
}
const said = (under: PhoneSession) =>
  under.drills.map(({ title, sides, limit: held }) =>
    [
      title,
      sides.map(({ side, sets }) => `${side} ${sets}`).join(' '),
      held ? (held.out ? 'out' : 'cut') : '',
    ]
      .filter(Boolean)
      .join(': '),
  );

describe('a session under the limits of the client', () => {
  it('is left alone without a limit in force', () => {
    const planned = session();
    expect(limitSession(planned, under([]))).toBe(planned);
    expect(limitSession(planned, under([limit({ until: '2026-11-24' })]))).toBe(planned);
  });

  it('keeps a drill that is ruled out in its place, with swaps that no limit touches, the first choice first', () => {
    const limited = limitSession(session(), under([limit()]));
    expect(said(limited)).toEqual(['Wall handstand: left 4 right 4: out', 'Pull-up: both 4']);
    const held = limited.drills[0]?.limit;
    expect(held?.words).toBe('Nothing for the wrist bent back');
    expect(held?.swaps.map((one) => [one.title, one.support, one.sides.map((side) => side.dose)])).toEqual([
      ['on fists', 'fists', ['4 × 20 s', '4 × 20 s']],
      ['box lean', null, ['4 × 40 s']],
    ]);
  });

  it('splits a drill of which one side is ruled out', () => {
    const limited = limitSession(session(), under([limit({ side: 'left' })]));
    expect(said(limited)).toEqual([
      'Wall handstand: right 4',
      'Wall handstand: left 4: out',
      'Pull-up: both 4',
    ]);
    expect(limited.drills[1]?.limit?.swaps.map((one) => one.title)).toEqual(['on fists', 'box lean']);
  });

  it('cuts the sets of a drill that is reduced', () => {
    const limited = limitSession(session(), under([limit({ rule: 'reduced', percent: 50 })]));
    expect(said(limited)[0]).toBe('Wall handstand: left 2 right 2: cut');
    expect(limited.drills[0]?.sides[0]?.dose).toBe('2 × 20 s');
  });

  it('offers no swap that the session has already', () => {
    const twice = session();
    const lean = { ...(twice.drills[1] as PhoneSession['drills'][number]), key: 'three' };
    lean.sides = [{ ...(lean.sides[0] as (typeof lean.sides)[number]), rungId: 'lean' }];
    const limited = limitSession({ ...twice, drills: [...twice.drills, lean] }, under([limit()]));
    expect(limited.drills[0]?.limit?.swaps.map((one) => one.title)).toEqual(['on fists']);
  });

  it('offers no swap that is meant for another drill', () => {
    const limited = limitSession(session(), under([limit()], [{ ...swap('lean'), rungId: 'pull' }]));
    expect(limited.drills[0]?.limit?.swaps).toEqual([]);
  });

  it('says the limits in force once', () => {
    expect(limitsInWords([limit(), limit({ from: '2026-12-01' })], DATE)).toEqual([
      'Nothing for the wrist bent back, until Fri 11 Dec (physiotherapist)',
    ]);
  });
});

describe('a swap taken on the phone', () => {
  const limited = limitSession(session(), under([limit()]));
  const key = limited.drills[0]?.key ?? '';
  const start = () =>
    newDraft({
      kind: 'training',
      date: DATE,
      zone: 'Europe/Lisbon',
      planVersion: 1,
      session: limited,
      usualMinutes: null,
      now: new Date('2026-11-25T18:00:00.000Z'),
      id: 'id',
    });
  const sent = (choice: number | null, how = 'typed' as const) => {
    const draft = { ...start(), ...changeSwap(start(), limited, { key, choice }) };
    const filled = Object.fromEntries(
      Object.entries(draft.sets).map(([name, sets]) => [
        name,
        sets.map((set) => ({ ...set, how, value: 15 })),
      ]),
    );
    return toBody({ ...draft, sets: filled }, withSwaps(limited, draft.swaps), new Date());
  };

  it('has no sets of a drill that is ruled out until something is chosen', () => {
    expect(Object.keys(start().sets)).toEqual([setKey('pull', 'both')]);
    expect(withSwaps(limited).drills.map((drill) => drill.title)).toEqual(['Pull-up']);
  });

  it('logs another rung as what it was', () => {
    const rungs = sent(1).sets.map(({ rungId, side, support }) => `${rungId} ${side} ${support}`);
    expect(new Set(rungs)).toEqual(new Set(['pull both null', 'lean both null']));
    expect(rungs.filter((rung) => rung.startsWith('lean'))).toHaveLength(4);
  });

  it('logs the same rung on its support', () => {
    expect(withSwaps(limited, { [key]: 0 }).drills[0]?.title).toBe('Wall handstand, on fists');
    const held = sent(0).sets.filter((set) => set.rungId === 'stand');
    expect(held.map((set) => `${set.side} ${set.support} of ${set.planned}`)).toEqual([
      ...new Array(4).fill('left fists of 20'),
      ...new Array(4).fill('right fists of 20'),
    ]);
  });

  it('logs the drill itself where it was done all the same', () => {
    const held = sent(ALL_THE_SAME).sets.filter((set) => set.rungId === 'stand');
    expect(held.map((set) => set.support)).toEqual(new Array(8).fill(null));
  });

  it('keeps what was filled in elsewhere when the choice changes, and drops the sets of the choice before', () => {
    const draft = start();
    draft.sets[setKey('pull', 'both')] = [{ how: 'typed', value: 9, tried: null, faults: [] }];
    const first = { ...draft, ...changeSwap(draft, limited, { key, choice: 1 }) };
    expect(first.sets[setKey('lean', 'both')]).toHaveLength(4);
    const second = { ...first, ...changeSwap(first, limited, { key, choice: 0 }) };
    expect(Object.keys(second.sets).sort()).toEqual(['pull both', 'stand left', 'stand right']);
    expect(second.sets[setKey('pull', 'both')]?.[0]?.value).toBe(9);
    const none = changeSwap(second, limited, { key, choice: null });
    expect(Object.keys(none.sets)).toEqual(['pull both']);
    expect(none.swaps).toEqual({});
  });

  it('is found again in what was sent, when it is opened to be corrected', () => {
    expect(swapsTaken(limited, sent(0).sets)).toEqual({ [key]: 0 });
    expect(swapsTaken(limited, sent(1).sets)).toEqual({ [key]: 1 });
    expect(swapsTaken(limited, sent(ALL_THE_SAME).sets)).toEqual({ [key]: ALL_THE_SAME });
    expect(swapsTaken(limited, sent(null).sets)).toEqual({});
  });
});

describe('while upside-down work is held', () => {
  const held = limit({
    tissue: null,
    rule: 'no-upside-down',
    until: null,
    who: 'the health questions at the start',
  });
  const down = { ...STAND, upsideDown: true };
  const rungs = new Map([...RUNGS, [down.id, down], [LEAN.id, LEAN]]);
  const swaps = [swap('lean'), swap('stand', 'fists')];

  it('the drill is struck out with one beside that is not upside down, on no support either; the rest stays', () => {
    const [stand, pull] = limitSession(session(), { date: DATE, limits: [held], rungs, swaps }).drills;
    expect(stand?.limit).toMatchObject({ out: true, words: 'Nothing upside down' });
    expect(stand?.limit?.swaps.map(({ title, support }) => [title, support])).toEqual([['box lean', null]]);
    expect(pull?.limit).toBeUndefined();
  });

  it('is kept for the check-in without signal as it is seen on Today', () => {
    const sessions = [limitSession(session(), { date: DATE, limits: [held], rungs, swaps })];
    const form = phoneForm({
      clientId: 'c',
      client: { coachName: 'Ines', usualMinutes: null },
      date: DATE,
      planVersion: 1,
      sessions,
      otherDrills: [],
    });
    expect(form.sessions[0]?.drills[0]?.limit).toEqual(sessions[0]?.drills[0]?.limit);
  });

  it('two yes are one line to the client', () => {
    expect(limitsInWords([held, { ...held, from: '2026-11-24' }], DATE)).toEqual([
      'Nothing upside down, until further word (the health questions at the start)',
    ]);
  });
});
