import { describe, expect, it } from 'vitest';
import type { TissueSide } from '#lib/checks/types.ts';
import type { HistoryLimit, HistoryPlan } from '#lib/domain/history.ts';
import type { TissueState } from '#lib/planning/gaps/body-state.ts';
import { findGaps, type GapResult } from '#lib/planning/gaps/find-gaps.ts';
import type { GapContext } from '#lib/planning/gaps/gap-context.ts';
import type { Assessment, SideSeen } from '#lib/planning/gaps/gap-types.ts';
import { intoSessions } from '#lib/planning/gaps/into-sessions.ts';
import { whyLeft } from '#lib/planning/gaps/why-left.ts';
import { assessed, CONTEXT } from '#tests/fixtures/gap-library.ts';

type Known = Record<string, Partial<SideSeen>>;
function find(aim: string, known: Known, over: Partial<Assessment> = {}, context: Partial<GapContext> = {}) {
  const { asks, assessment } = assessed(aim, known, over);
  return findGaps(asks, assessment, { ...CONTEXT, ...context });
}
const drills = (result: GapResult) => result.chosen.map(({ option }) => option.ladder.id);
const rungs = (result: GapResult) =>
  result.chosen.flatMap(({ option }) => option.lines.map(({ rung, side }) => `${rung.id} ${side}`));
const left = (result: GapResult) => result.left.map(({ ask }) => ask.ladder.id);
const why = (result: GapResult, at = 0) => {
  const part = result.left[at];
  return part ? whyLeft(part, result).map(({ words }) => words) : [];
};
const sore = (key: TissueSide, pain: number, overUsual = 0): ReadonlyMap<TissueSide, TissueState> =>
  new Map([[key, { pain, where: 'left wrist', overUsual }]]);
const limit = (over: Partial<HistoryLimit>): HistoryLimit => ({
  tissue: null,
  region: null,
  side: null,
  rule: 'none',
  percent: null,
  from: '2026-11-01',
  until: '2026-12-11',
  who: 'physiotherapist',
  ...over,
});
const plan = (rungIds: string[], session = 'A'): HistoryPlan => ({
  version: 3,
  from: '2026-11-01',
  until: null,
  sessionsPerWeek: 4,
  items: rungIds.map((rungId) => ({
    session,
    rungId,
    side: 'both',
    sets: 4,
    target: 5,
    minutes: null,
    timesPerWeek: 2,
  })),
  easyWeeks: [],
  testWeeks: [],
  acceptedWeekAu: null,
  skillsInFocus: [],
});

const STANDS = { X1: { film: 'steady' }, X2: { film: 'steady' } } as const;
const PLANCHE: Known = {
  LN: { rungId: 'LN.4', sets: 5, value: 10 },
  PL: { rungId: 'PL.2', sets: 5, value: 4 },
};

describe('the fewest drills', () => {
  it('one drill for two open parts where it loads the same as hard: the lift for the lowering too', () => {
    const result = find('P4.4', {
      ...STANDS,
      P3: { film: 'drops' },
      P4: { rungId: 'P4.1', sets: 4, value: 3 },
      P1: { film: 'steady' },
    });
    expect(result.open.map(({ ask }) => ask.ladder.id)).toEqual(['P3', 'P4']);
    expect(rungs(result)).toEqual(['P4.1 both']);
    expect(result.chosen[0]?.covers.map(({ part, how }) => [part.ask.ladder.id, how])).toEqual([
      ['P3', 'loads-the-same'],
      ['P4', 'own'],
    ]);
  });
  it('the same drill under another name covers both, also in balance', () => {
    const result = find('P4.4', {
      ...STANDS,
      H5: { film: 'drops' },
      PT: { rungId: 'PT.1', sets: 2, value: 10 },
    });
    expect(result.open.map(({ ask }) => ask.ladder.id)).toEqual(['PT', 'H5']);
    expect(drills(result)).toEqual(['H5']);
  });
  it('a hold does not cover what moves: the planche holds, the blade pushes move', () => {
    const known = { ...PLANCHE, LN: { film: 'drops' } } as const;
    expect(drills(find('PL.7', known, { kit: [] }))).toEqual(['W1', 'LN', 'PL']);
    expect(drills(find('PL.7', PLANCHE, { kit: [] }))).toEqual(['W1', 'PL']);
  });
  it('over- and under-balance are two strengths: neither drill covers the other', () => {
    const known = { ...STANDS, H3: { film: 'drops' }, H4: { film: 'drops' } } as const;
    expect(drills(find('H5.4', known))).toEqual(['H3', 'H4']);
  });
  it('chooses nothing when nothing is open, and asks nothing of what is not known', () => {
    const result = find('P4.4', {});
    expect([result.open, result.chosen, result.left]).toEqual([[], [], []]);
    expect(result.parts.every(({ standing }) => standing === 'not-known')).toBe(true);
  });
  it('brings the mobility that belongs to a drill, unless its range is covered', () => {
    const known = { H4: { film: 'drops' } } as const;
    expect(drills(find('H5.4', known))).toEqual(['W1', 'H4', 'X1']);
    expect(drills(find('H5.4', { ...known, X2: { film: 'steady' } }))).toEqual(['H4', 'X1']);
  });
  it('each side has its own rung; a side that stands comes along without being a gap', () => {
    const result = find(
      'OA.8',
      {
        ...STANDS,
        'OA left': { rungId: 'OA.4', sets: 3, value: 8 },
        'OA right': { rungId: 'OA.9', value: 5, sets: 10 },
      },
      { kit: ['block', 'scale'] },
    );
    expect(result.open.map(({ seen }) => seen.side)).toEqual(['left']);
    expect(rungs(result)).toContain('OA.4 left');
    expect(result.left).toEqual([]);
  });
});

describe('what cannot be done now', () => {
  it('kit that is not at hand, by its name', () => {
    const result = find('MU.6', { FG: { film: 'drops' } }, { kit: ['bar'] });
    expect(left(result)).toEqual(['FG']);
    expect(why(result)).toEqual(['asks for rings, which is not at hand']);
    expect(left(find('MU.6', { FG: { film: 'drops' } }, { kit: ['rings'] }))).toEqual([]);
  });
  it('a rung whose opening is known not to stand; one that is not known keeps nothing closed', () => {
    const closed = find('P4.1', { P4: { film: 'drops' }, H2: { rungId: 'H2.3' } });
    expect(left(closed)).toContain('P4');
    expect(why(closed, left(closed).indexOf('P4'))).toEqual([
      'is not open yet: The lift at the wall opens with the close chest-to-wall hold.',
    ]);
    expect(left(find('P4.1', { P4: { film: 'drops' } }))).toEqual([]);
  });
  it('a client who trains past an opening keeps training', () => {
    expect(left(find('P4.1', { P4: { rungId: 'P4.1' }, H2: { film: 'steady' } }))).toEqual([]);
    expect(left(find('P4.1', { P4: { rungId: 'P4.1' }, H2: { rungId: 'H2.3' } }))).toEqual([]);
  });
  it('a limit on the side it works, from its first to its last day', () => {
    const none = { tissue: 'wrist-back', side: 'left' } as const;
    const limited = (over: Partial<HistoryLimit>, date = CONTEXT.date) =>
      find('PL.7', PLANCHE, { kit: [] }, { limits: [limit({ ...none, ...over })], date });
    expect(left(limited({}))).toEqual(['LN', 'PL']);
    expect(new Set(why(limited({})))).toEqual(new Set(['is ruled out by a limit']));
    expect(left(limited({}, '2026-12-11'))).toEqual(['LN', 'PL']);
    expect(left(limited({}, '2026-12-12'))).toEqual([]);
  });
  it('a limit on the floor leads to bars where they are at hand', () => {
    const result = find(
      'PL.7',
      PLANCHE,
      { kit: ['parallel-bars'] },
      { limits: [limit({ rule: 'no-floor' })] },
    );
    expect(result.left).toEqual([]);
    expect(result.chosen.every(({ option }) => option.support === 'parallel-bars')).toBe(true);
  });
  it('nothing overhead takes out the handstand, not the planche', () => {
    const limits = [limit({ rule: 'no-overhead' })];
    expect(left(find('H5.4', { ...STANDS, H4: { film: 'drops' } }, {}, { limits }))).toEqual(['H4']);
    expect(left(find('PL.7', PLANCHE, {}, { limits }))).toEqual([]);
  });
  it('a limit to half leaves the drill with half the sets', () => {
    const reduced = limit({ tissue: 'shoulder-forward', rule: 'reduced', percent: 50 });
    const line = (limits: HistoryLimit[]) => {
      const result = find('PL.7', PLANCHE, {}, { limits });
      return result.chosen.find(({ option }) => option.ladder.id === 'PL')?.option.lines[0]?.sets;
    };
    expect(line([])).toBe(4);
    expect(line([reduced])).toBe(2);
  });
  it('pain of 6 and more in a tissue it loads: stop, and a clinician; 5 is only counted', () => {
    const hurt = (pain: number) =>
      find('PL.7', PLANCHE, { kit: [] }, { body: sore('wrist-back:left', pain) });
    expect(left(hurt(6))).toEqual(['LN', 'PL']);
    expect(why(hurt(6))[0]).toContain('stop that work and see a licensed clinician');
    expect(left(hurt(5))).toEqual([]);
  });
  it('pain written into a part counts for what that part loads', () => {
    const result = find('PL.7', { ...PLANCHE, LN: { ...PLANCHE.LN, pain: 7 } }, { kit: [] });
    expect(left(result)).toEqual(['LN', 'PL']);
  });
  it('under 18 what opens only with the coach, until the coach allows it', () => {
    const known = { BK: { film: 'drops' } } as const;
    const back = (under18: boolean, under18Allowed: boolean) =>
      left(find('BK.4', known, { kit: ['rings'], under18Allowed }, { under18 }));
    expect(back(true, false)).toEqual(['BK']);
    expect(back(true, true)).toEqual([]);
    expect(back(false, false)).toEqual([]);
  });
});

describe('load and change decide between as few', () => {
  it('a sore wrist goes on bars', () => {
    const result = find('PL.7', PLANCHE, { kit: ['parallel-bars'] }, { body: sore('wrist-back:left', 4) });
    expect(result.chosen.map(({ option }) => option.support)).toEqual(['parallel-bars', 'parallel-bars']);
    expect(result.score[1]).toBe(2);
  });
  it('a tissue loaded over its usual week counts too, below pain 3 nothing does', () => {
    const strain = (pain: number, over: number) =>
      find('PL.7', PLANCHE, { kit: [] }, { body: sore('wrist-back:left', pain, over) }).score[2];
    expect(strain(2, 0)).toBe(0);
    expect(strain(0, 0.5)).toBeGreaterThan(0);
    expect(strain(3, 0)).toBeGreaterThan(0);
    expect(strain(0, 3)).toBe(strain(0, 1));
  });
  it('what is in the plan already stays', () => {
    const known = { H4: { film: 'drops' }, X1: { film: 'steady' } } as const;
    expect(rungs(find('H5.4', known))).toContain('W1.1 both');
    expect(rungs(find('H5.4', known, {}, { plan: plan(['X2.1']) }))).toContain('X2.1 left');
  });
  it('at most four strength drills a session, those of other skills counted', () => {
    const known = { LN: { film: 'drops' }, PL: { rungId: 'PL.1' }, X2: { film: 'steady' } } as const;
    const full = plan(['PU.6', 'DP.1', 'LV.2', 'CB.1']);
    const result = find('PL.7', known, { sessions: ['A'] }, { plan: full });
    expect(result.chosen.filter(({ strength }) => strength)).toEqual([]);
    expect(result.room).toEqual([
      { session: 'A', kept: ['Front lever holds', 'Row to pull-up', 'Chest to bar', 'Dip'], room: 0 },
    ]);
    expect(why(result)[0]).toContain('finds no room');
    expect(left(find('PL.7', known, { sessions: ['A', 'B'] }, { plan: full }))).toEqual([]);
  });
});

it('what the plan has of the parts asked about takes no room: it is chosen anew', () => {
  const result = find('PL.7', PLANCHE, { sessions: ['A'] }, { plan: plan(['LN.3', 'PL.1', 'PU.6', 'DP.1']) });
  expect(result.room[0]).toMatchObject({ kept: ['Row to pull-up', 'Dip'], room: 2 });
});

describe('the same input, the same answer', () => {
  it('whatever the order of the parts, of limits and of placements', () => {
    const { asks, assessment } = assessed('P4.4', {
      P1: { film: 'drops' },
      P2: { film: 'drops' },
      P3: { film: 'drops' },
      PT: { film: 'drops' },
    });
    const once = findGaps(asks, assessment, CONTEXT);
    const turned = findGaps(asks, { ...assessment, parts: [...assessment.parts].reverse() }, CONTEXT);
    expect(rungs(turned)).toEqual(rungs(once));
    expect(turned.score).toEqual(once.score);
  });
  it('sessions: strength where most room is, mobility beside what it belongs to', () => {
    const result = find('P4.4', {
      ...STANDS,
      P1: { film: 'drops' },
      P2: { film: 'drops' },
      P4: { rungId: 'P4.1' },
    });
    const placed = intoSessions(result.chosen, result.room, CONTEXT).map(
      ({ session, drill }) => `${session} ${drill.option.ladder.id}`,
    );
    expect(placed).toEqual(['A X3', 'A P2', 'B P1', 'B P4']);
    expect(new Set(placed).size).toBe(placed.length);
  });
});
