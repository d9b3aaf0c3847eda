import { describe, expect, it } from 'vitest';
import { stepUpEarned } from '#lib/checks/rules/step-up-earned.ts';
import type { HistoryCheckIn, HistoryFilm, HistoryFilmVerdict } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import {
  aCheckIn,
  aHistory,
  aPain,
  aPlan,
  aRung,
  aSet,
  day,
  evening,
  START,
  sets,
} from '#tests/fixtures/history-builders.ts';

const met = (days: number, over: Partial<HistoryCheckIn> = {}) => aCheckIn(days, over);
const short = (days: number) => aCheckIn(days, { sets: sets([5, 5, 4]) });
const on = (checkIns: HistoryCheckIn[], days = 20, over = {}) =>
  judge(stepUpEarned, aHistory({ checkIns, ...over }), days);
const saidOf = (checkIns: HistoryCheckIn[], days = 20, over = {}) =>
  said(theOutcome(on(checkIns, days, over)));

describe('step-up-earned', () => {
  it('is earned when the pass mark was met on two of two days', () => {
    const finding = theFinding(on([met(15), met(17)]));
    expect(finding).toMatchObject({ tier: 'good-news', points: 0, subject: { key: 'pull:pull-1' } });
    expect(finding.sentence).toBe(
      'Pull-up: 3 × 5 met on **2 of the last 2** training days, clean, pain 0 of 10 at most.',
    );
    expect(finding.step.text).toBe('Step up to the next rung, with this rung beside it');
  });
  it('forgives one day of the last three, not two', () => {
    expect(saidOf([met(13), short(15), met(17)])).toBe('flagged watch');
    expect(saidOf([short(13), short(15), met(17)])).toBe('clear');
    expect(saidOf([met(11), met(13), short(15), short(17)])).toBe('clear');
  });
  it('asks for clean sets: one that is not clean does not count', () => {
    const unclean = aCheckIn(17, { sets: [...sets([5, 5]), ...sets([5], { clean: false, index: 2 })] });
    expect(saidOf([met(15), unclean])).toBe('clear');
    const fourth = aCheckIn(17, {
      sets: [...sets([5, 5]), ...sets([5], { clean: false, index: 2 }), ...sets([5], { index: 3 })],
    });
    expect(saidOf([met(15), fourth])).toBe('flagged watch');
  });
  it('counts what is missing', () => {
    expect(saidOf([met(15)])).toBe('not-enough-history: 1 of 2 training days on this rung');
    expect(saidOf([])).toBe('not-enough-history: 0 of 2 training days on this rung');
  });
  it('does not count easy days, soft ground and days only tapped', () => {
    const tapped = (days: number) => aCheckIn(days, { sets: sets([5, 5, 5], { how: 'as-planned' }) });
    expect(saidOf([met(15), tapped(17)])).toContain('1 of 2');
    const oneTyped = aCheckIn(17, {
      sets: [...sets([5, 5], { how: 'as-planned' }), ...sets([5], { index: 2 })],
    });
    expect(saidOf([met(15), oneTyped])).toBe('flagged watch');
    expect(saidOf([met(15), met(17, { ground: 'sand' })])).toContain('1 of 2');
    expect(saidOf([met(15), met(17)], 20, { plans: [aPlan({ easyWeeks: [day(17)] })] })).toContain('1 of 2');
  });
  it('allows pain up to 2 where the rung loads, on the day and on the morning after', () => {
    expect(saidOf([met(15), met(17, { pain: [aPain(2)] })])).toBe('flagged watch');
    expect(saidOf([met(15), met(17, { pain: [aPain(3)] })])).toBe('clear');
    expect(saidOf([met(15), met(17, { pain: [aPain(3, { region: 'knee' })] })])).toBe('flagged watch');
    expect(saidOf([met(15), met(17, { pain: [aPain(3, { kind: 'muscle' })] })])).toBe('flagged watch');
    const morning = aCheckIn(18, { sets: [], pain: [aPain(3, { moment: 'morning' })] });
    expect(saidOf([met(15), met(17), morning])).toBe('clear');
  });
  it('is one step stricter under 18', () => {
    const checkIns = [met(15), met(17, { pain: [aPain(2)] })];
    expect(saidOf(checkIns, 20, { client: { under18: true } })).toBe('clear');
  });
  it('wants days 20 hours apart', () => {
    const at = (days: number, time: string) => met(days, { sentAt: `${day(days)}T${time}:00.000Z` });
    expect(saidOf([at(15, '22:00'), at(16, '17:59')])).toBe('clear');
    expect(saidOf([at(15, '22:00'), at(16, '18:00')])).toBe('flagged watch');
    const late = met(15, { sentAt: `${day(16)}T18:00:00.000Z` });
    expect(saidOf([late, at(16, '18:01')])).toBe('flagged watch');
  });
  it('asks "placed too low?" in the first 14 days', () => {
    expect(theFinding(on([met(2), met(4)], 13)).sentence).toContain('Placed too low?');
    expect(theFinding(on([met(2), met(4)], 14)).sentence).not.toContain('Placed too low?');
  });
  it('says film to see where the rung needs one', () => {
    const finding = theFinding(on([met(15), met(17)], 20, { rungs: [aRung({ needsFilm: true })] }));
    expect(finding.sentence).toContain('Numbers earned, film to see.');
    expect(finding.step.kind).toBe('ask-film');
  });
  describe('where the pass needs a film', () => {
    const needs = (over = {}) => ({ rungs: [aRung({ needsFilm: true, ...over })] });
    const filmed = (days: number, ...verdicts: Partial<HistoryFilmVerdict>[]): HistoryFilm => ({
      id: `film-${days}`,
      askedAt: `${day(days)}T08:00:00.000Z`,
      receivedAt: `${day(days)}T20:00:00.000Z`,
      lookedAt: `${day(days + 1)}T08:00:00.000Z`,
      words: '',
      rungId: 'pull-1',
      side: 'both',
      verdicts: verdicts.map((one, index) => ({
        filmedOn: day(days),
        side: 'both',
        checkInId: null,
        index: null,
        verdict: 'clean',
        faults: [],
        at: `${day(days + 1)}T08:00:0${index}.000Z`,
        ...one,
      })),
    });
    const with3 = (films: HistoryFilm[], over = {}) =>
      on([met(15), met(17)], 20, { ...needs(), films, ...over });

    it('is earned whole after a clean film of the counted days', () => {
      const finding = theFinding(with3([filmed(17, {})]));
      expect(finding.sentence).toContain('Seen clean on film of Thu 19 Mar.');
      expect(finding.short).toBe('Pull-up: step earned');
      expect(finding.step).toMatchObject({ kind: 'step-up' });
      expect(finding.evidence).toMatchObject({ onFilm: 'clean', filmedOn: day(17) });
      expect(theFinding(with3([filmed(15, {})])).step.kind).toBe('step-up');
    });
    it('waits for a film where there is none of these days, or nothing could be seen', () => {
      for (const films of [[], [filmed(14, {})], [filmed(17, { verdict: 'cannot-see' })], [filmed(17)]]) {
        const finding = theFinding(with3(films));
        expect(finding.short).toBe('Pull-up: numbers earned, film to see');
        expect(finding.step.text).toContain('Ask for a film');
      }
      expect(theFinding(with3([{ ...filmed(17, {}), rungId: 'other' }])).step.kind).toBe('ask-film');
    });
    it('knows no verdict before it was given', () => {
      expect(theFinding(on([met(15), met(17)], 17, { ...needs(), films: [filmed(17, {})] })).step.kind).toBe(
        'ask-film',
      );
    });
    it('says what was seen where the newest film was not clean', () => {
      const films = [filmed(15, {}), filmed(17, { verdict: 'not-clean', faults: ['hips-turn'] })];
      const finding = theFinding(with3(films));
      expect(finding.sentence).toContain('Numbers earned; not clean on film of Thu 19 Mar: hips turn.');
      expect(finding.step).toMatchObject({ kind: 'ask-film' });
      expect(theFinding(with3([...films, filmed(18, {})])).step.kind).toBe('step-up');
    });
    it('knows a film of the same day, and says nothing more of one without a named fault', () => {
      const atOnce = { at: evening(20).instant };
      expect(theFinding(with3([filmed(20, atOnce)])).step.kind).toBe('step-up');
      const unnamed = theFinding(with3([filmed(17, { verdict: 'not-clean' })]));
      expect(unnamed.sentence).toMatch(/not clean on film of Thu 19 Mar\.$/);
    });
    it('wants both sides where each side is asked', () => {
      const both = (days: number) =>
        aCheckIn(days, {
          sets: [...sets([5, 5, 5], { side: 'left' }), ...sets([5, 5, 5], { side: 'right' })],
        });
      const said = (...verdicts: Partial<HistoryFilmVerdict>[]) =>
        theFinding(
          on([both(15), both(17)], 20, { ...needs({ eachSide: true }), films: [filmed(17, ...verdicts)] }),
        );
      expect(said({ side: 'left' }).step.kind).toBe('ask-film');
      expect(said({ side: 'left' }, { side: 'right' }).step.kind).toBe('step-up');
      expect(said({ side: 'both' }).step.kind).toBe('step-up');
      expect(said({ side: 'left' }, { side: 'right', verdict: 'not-clean' }).sentence).toContain('not clean');
    });
    it('sees the sets of a history without its films, and a set that was not clean on film counts no more', () => {
      const told = { clean: true, faults: [] };
      const seen = (verdict: 'clean' | 'not-clean') =>
        on(
          [
            met(15),
            met(17, {
              sets: [
                ...sets([5, 5]),
                aSet({ index: 2, clean: verdict === 'clean', onFilm: { verdict, faults: [], told } }),
              ],
            }),
          ],
          20,
          needs(),
        );
      expect(theFinding(seen('clean')).step.kind).toBe('step-up');
      expect(said(theOutcome(seen('not-clean')))).toBe('clear');
    });
  });
  it('names the next rung where it is known', () => {
    const next = aRung({
      id: 'pull-2',
      position: 2,
      name: 'Pull-up, chest high',
      pass: { sets: 3, target: 3, days: 2, tries: null },
    });
    expect(theFinding(on([met(15), met(17)], 20, { rungs: [aRung(), next] })).step.text).toContain(
      'Pull-up, chest high, 3 × 3',
    );
  });
  it('takes the weaker side of a rung asked of each side', () => {
    const rungs = [aRung({ eachSide: true })];
    const sides = (left: number[], right: number[]) => (days: number) =>
      aCheckIn(days, { sets: [...sets(left, { side: 'left' }), ...sets(right, { side: 'right' })] });
    const even = sides([5, 5, 5], [5, 5, 5]);
    const weak = sides([5, 5, 4], [5, 5, 5]);
    expect(saidOf([even(15), even(17)], 20, { rungs })).toBe('flagged watch');
    expect(saidOf([weak(15), weak(17)], 20, { rungs })).toBe('clear');
  });
  it('counts only days since the client stands on the rung, and is silent about other rungs', () => {
    const placements = [{ ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(16) }];
    expect(saidOf([met(15), met(17)], 20, { placements })).toContain('1 of 2');
    expect(
      on([met(15), met(17)], 20, {
        placements: [{ ladderId: 'pull', side: 'both', rungId: 'other', from: START }],
      }),
    ).toEqual([]);
  });
  it('asks about pain on the side it is about, and in the middle', () => {
    const placements = [{ ladderId: 'pull', side: 'left' as const, rungId: 'pull-1', from: day(15) }];
    const left = (days: number, side: 'left' | 'right' | 'middle', value = 3) =>
      aCheckIn(days, { sets: sets([5, 5, 5], { side: 'left' }), pain: [aPain(value, { side })] });
    const rungs = [aRung({ eachSide: true })];
    expect(saidOf([left(15, 'right'), left(17, 'right')], 20, { placements, rungs })).toBe('flagged watch');
    expect(saidOf([left(15, 'left'), left(17, 'left')], 20, { placements, rungs })).toBe('clear');
    expect(saidOf([left(15, 'middle'), left(17, 'middle')], 20, { placements, rungs })).toBe('clear');
  });
  it('asks about the mornings after the days that count, not about others', () => {
    const morning = (days: number) => aCheckIn(days, { sets: [], pain: [aPain(3, { moment: 'morning' })] });
    expect(saidOf([morning(10), met(15), met(17)])).toBe('flagged watch');
    const known = theFinding(on([met(15), aCheckIn(16, { sets: [] }), met(17)]));
    expect(known.evidence.morningsKnown).toBe(1);
  });
  it('knows a morning that was told of, sore or not, and not one of which only the session was told', () => {
    const known = (moment: 'morning' | 'during' | 'after') => {
      const next = aCheckIn(16, { sets: [], pain: [aPain(2, { moment })] });
      return theFinding(on([met(15), next, met(17)])).evidence.morningsKnown;
    };
    expect(known('morning')).toBe(1);
    expect(known('during')).toBe(0);
    expect(known('after')).toBe(0);
  });
});
