import { describe, expect, it } from 'vitest';
import { newHardest } from '#lib/checks/rules/new-hardest.ts';
import { settle } from '#lib/checks/settle.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { Tissue } from '#lib/domain/vocabulary.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import {
  aCheckIn,
  aHistory,
  aPain,
  aRestDay,
  aRung,
  day,
  evening,
  sets,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';
import { aFinding } from '#tests/fixtures/reason-life.ts';

const hold = (id: string, weight: number) =>
  aRung({
    id,
    ladderId: 'planche',
    name: id,
    measure: 'hold',
    secondsPerRep: null,
    weights: { 'shoulder-forward': weight },
  });
/** Ten weeks of holds at weight 0.6; the last session holds `seconds` at `weight` beside one of them. */
const history = (weight: number, seconds: number, pain = 0) =>
  aHistory({
    rungs: [hold('tuck', 0.6), hold('harder', weight)],
    checkIns: threeAWeek(10, (days, session) =>
      session < 29
        ? aCheckIn(days, { sets: sets([20, 20, 20], { rungId: 'tuck' }) })
        : aCheckIn(days, {
            sets: [...sets([20], { rungId: 'tuck' }), ...sets([seconds], { rungId: 'harder', index: 1 })],
            pain: pain > 0 ? [aPain(pain, { region: 'shoulder-front' })] : [],
          }),
    ),
  });
const LAST = 67;
const sayOf = (weight: number, seconds: number, pain = 0) =>
  said(theOutcome(judge(newHardest, history(weight, seconds, pain), LAST)));

describe('new-hardest', () => {
  // Over 30 s at more than 1.1 x the earlier peak: common practice.
  it.each([
    [0.66, 31, 'clear'],
    [0.67, 30, 'clear'],
    [0.67, 31, 'flagged note'],
  ])('weight %f after 0.6 for %i s gives %s', (weight, seconds, expected) => {
    expect(sayOf(weight, seconds)).toBe(expected);
  });
  it('is watch when it hurts there, or when the week is at 1.25 x usual', () => {
    expect(sayOf(0.67, 31, 1)).toBe('flagged note');
    expect(sayOf(0.67, 31, 2)).toBe('flagged watch');
    // Usual 54 BW s; the last week 42 and 0.45 a second.
    expect(sayOf(0.9, 56)).toBe('flagged note');
    expect(sayOf(0.9, 57)).toBe('flagged watch');
  });
  it('stays a note on a rung the coach has placed the client on, unless it hurts', () => {
    const placements = [{ ladderId: 'planche', side: 'both' as const, rungId: 'harder', from: '2026-01-01' }];
    const placed = (pain: number) =>
      said(theOutcome(judge(newHardest, { ...history(0.9, 120, pain), placements }, LAST)));
    expect(placed(0)).toBe('flagged note');
    expect(placed(2)).toBe('flagged watch');
  });
  it('says what, how much and by how much, and that a note is no row', () => {
    const finding = theFinding(judge(newHardest, history(0.72, 31), LAST));
    expect(finding.sentence).toContain('harder: 31 s this week, **20 % harder** for shoulder forward');
    expect(finding.tier).toBeNull();
  });
  it('names no side when both hands do the same, counts tissues once, and holds its step back', () => {
    const made = history(0.72, 31, 2);
    const finding = theFinding(judge(newHardest, made, LAST));
    expect(finding.sentence).toContain('for shoulder forward, straight arm than anything');
    expect(finding.evidence).toMatchObject({ tissues: 'shoulder-forward:both', others: 0 });
    const rung = { ladderId: 'planche', rungId: 'harder', side: 'both' } as const;
    const earned = aFinding('step-up-earned', 'watch', { subject: { key: 'planche', label: '', ...rung } });
    const [step] = settle(buildView(made, evening(LAST)), [earned, finding], DEFAULT_LIMITS);
    expect(step?.status).toBe('clear');
  });
  it('names the side when one arm works', () => {
    const made = history(0.72, 31);
    const rungs = made.rungs.map((rung) => ({ ...rung, helpingShare: 0.2 }));
    const checkIns = made.checkIns.map((one) => ({
      ...one,
      sets: one.sets.map((set) => ({ ...set, side: 'right' as const })),
    }));
    const { sentence, evidence } = theFinding(judge(newHardest, { ...made, rungs, checkIns }, LAST));
    expect(sentence).toContain('(right) than anything');
    expect(evidence.tissues).toBe('shoulder-forward:right');
  });
  it('names one and the same of two tissues that are alike, and counts the other', () => {
    const made = history(0.72, 31);
    const both = (weights: (weight: number) => Partial<Record<Tissue, number>>) =>
      theFinding(
        judge(
          newHardest,
          {
            ...made,
            rungs: [hold('tuck', 0.6), hold('harder', 0.72)].map((rung) => ({
              ...rung,
              weights: weights(rung.weights['shoulder-forward'] ?? 0),
            })),
          },
          LAST,
        ),
      ).evidence;
    const named = { tissues: 'elbow-bending:both', others: 1 };
    expect(both((weight) => ({ 'shoulder-forward': weight, 'elbow-bending': weight }))).toMatchObject(named);
    expect(both((weight) => ({ 'elbow-bending': weight, 'shoulder-forward': weight }))).toMatchObject(named);
  });
  it('says the same whichever hand did which of two rungs', () => {
    const oneArm = (id: string, weight: number, name = id) => ({
      ...hold(id, weight),
      name,
      helpingShare: 0,
    });
    const tuck = sets([20, 20], { rungId: 'tuck' }).flatMap((set) =>
      (['left', 'right'] as const).map((side) => ({ ...set, side })),
    );
    const did = (left: string, right: string, names: string[] = []) => {
      const rungs = [oneArm('tuck', 0.6), oneArm('first', 0.72, names[0]), oneArm('second', 0.72, names[1])];
      const last = [
        ...sets([31], { rungId: left, side: 'left' }),
        ...sets([31], { rungId: right, side: 'right' }),
      ];
      const checkIns = threeAWeek(10, (days, session) =>
        aCheckIn(days, { sets: session < 29 ? tuck : last }),
      );
      const placements = [{ ladderId: 'planche', side: 'both' as const, rungId: 'first', from: day(0) }];
      return theFinding(judge(newHardest, aHistory({ rungs, checkIns, placements }), LAST));
    };
    for (const finding of [did('first', 'second'), did('second', 'first')]) {
      expect(finding.sentence).toContain('first: 31 s this week');
      expect(finding.evidence.tissues).toBe('shoulder-forward:both');
    }
    // Of one name in two ladders: the one placed there stays the one spoken of.
    for (const finding of [
      did('first', 'second', ['hold', 'hold']),
      did('second', 'first', ['hold', 'hold']),
    ])
      expect(finding.evidence.isPlaced).toBe(true);
  });
  it('looks for something as hard in the 28 days before the last 7, all of them', () => {
    // The evening of day 70: the last 7 days are 64 to 70, the 28 before them 36 to 63.
    const hard = (days: number) => aCheckIn(days, { session: 'B', sets: sets([31], { rungId: 'harder' }) });
    const made = history(0.72, 31);
    const usual = made.checkIns.slice(0, 29);
    const on = (...days: number[]) =>
      said(theOutcome(judge(newHardest, { ...made, checkIns: [...usual, ...days.map(hard)] }, 70)));
    expect([on(63), on(64)]).toEqual(['clear, lower bound', 'flagged note']);
    expect([35, 36, 63, 64].map((days) => on(days, 68))).toEqual([
      'flagged note',
      'clear, lower bound',
      'clear, lower bound',
      'flagged note',
    ]);
  });
  it('is not cleared by a week without a word', () => {
    const made = history(0.72, 31);
    const rests = [3, 6, 9].map((days) => aRestDay(65 + days));
    const on = (days: number, checkIns = made.checkIns) =>
      said(theOutcome(judge(newHardest, { ...made, checkIns }, days)));
    expect(on(71)).toBe('flagged note');
    expect(on(74)).toBe('clear, lower bound');
    expect(on(74, [...made.checkIns, ...rests])).toBe('clear');
  });
  it('takes no heed of light preparation', () => {
    const light = history(0.72, 31);
    const rungs = light.rungs.map((rung) => ({ ...rung, share: 0.3 }));
    expect(said(theOutcome(judge(newHardest, { ...light, rungs }, LAST)))).toBe('clear');
  });
  it('waits for the first 28 days', () => {
    expect(said(theOutcome(judge(newHardest, history(0.9, 60), 20)))).toMatch(/of 28 days known$/);
  });
});

describe('new-hardest on its limits', () => {
  const spoken = (over: Parameters<typeof judge>[3]) =>
    theOutcome(judge(newHardest, history(0.72, 31), LAST, over)).status === 'flagged';
  it.each([
    ['tissue.loaded', 0.72],
    ['newHardest.atLeast', 0.36],
  ] as const)('%s speaks on the limit and not over it', (id, limit) => {
    expect(spoken({ [id]: limit })).toBe(true);
    expect(spoken({ [id]: limit + 0.001 })).toBe(false);
  });
  it('becomes a watch on the limit of the week there', () => {
    // The last week 42 BW s and 60 s of 0.45; usual 54.
    const level = (limit: number) =>
      said(theOutcome(judge(newHardest, history(0.9, 60), LAST, { 'newHardest.overUsual': limit })));
    expect(level(69 / 54)).toBe('flagged watch');
    expect(level(69 / 54 + 0.001)).toBe('flagged note');
  });
  it('names the first done of two that are as hard, and adds up their time', () => {
    const made = history(0.72, 16);
    const checkIns = [
      ...made.checkIns.slice(0, 28),
      aCheckIn(65, { sets: sets([15], { rungId: 'earlier' }) }),
      ...made.checkIns.slice(29),
    ];
    const rungs = [...made.rungs, hold('earlier', 0.72)];
    const finding = theFinding(judge(newHardest, { ...made, rungs, checkIns }, LAST));
    expect(finding.sentence).toContain('earlier: 31 s this week, **20 % harder**');
  });
  it('counts reps where the rung is counted in reps: over 15', () => {
    const made = history(0.72, 1);
    const rungs = made.rungs.map((one) =>
      one.id === 'harder' ? { ...one, measure: 'reps' as const, secondsPerRep: 1 } : one,
    );
    const withReps = (reps: number) => ({
      ...made,
      rungs,
      checkIns: made.checkIns.map((one, index) =>
        index === 29 ? { ...one, sets: sets([reps], { rungId: 'harder' }) } : one,
      ),
    });
    expect(said(theOutcome(judge(newHardest, withReps(15), LAST)))).toBe('clear');
    expect(said(theOutcome(judge(newHardest, withReps(16), LAST)))).toBe('flagged note');
  });
});
