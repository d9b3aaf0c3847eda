import { describe, expect, it } from 'vitest';
import { splitPage, weeksAfterSplit } from '#lib/views/ladders/split-page.ts';
import { evenTargets, readShape, shapeInWords, shownSteps } from '#lib/views/ladders/split-steps.ts';
import { starterLadders } from './starter-ladders.ts';

const ladders = starterLadders();
function pageOf(ladderName: string, number: number) {
  const ladder = ladders.find((one) => one.name === ladderName);
  const page = ladder && splitPage(ladder, ladder.rungs[number - 1]?.id ?? '');
  if (!page) throw new Error(`${ladderName} ${number}`);
  return page;
}

describe('what a split starts from', () => {
  it('knows both shapes of a planche and the tissue that carries them', () => {
    expect(pageOf('Planche holds', 4)).toMatchObject({
      mark: '4 × 8 s on 2 days',
      below: { name: 'Tuck', mark: '4 × 12 s on 2 days', target: '12' },
      shapes: {
        tissue: 'shoulder-forward',
        from: { hip: 130, shank: -20, straddle: 0 },
        to: { hip: 120, shank: -20, straddle: 0 },
      },
    });
    expect(pageOf('Front lever holds', 4).shapes).toMatchObject({ tissue: 'upper-back', to: { hip: 110 } });
    expect(pageOf('Back lever', 4).shapes).toMatchObject({ tissue: 'shoulder-behind', to: { hip: 90 } });
  });

  it('has no shapes where the rung is not such a hold', () => {
    expect(pageOf('Planche holds', 8).shapes).toBeNull();
    expect(pageOf('Row to pull-up', 3).shapes).toBeNull();
    expect(pageOf('Hang', 1)).toMatchObject({ shapes: null, below: null });
  });

  it('shares the usual weeks out', () => {
    expect(weeksAfterSplit(4, 2)).toBe('Each of the 2 then usually takes 2 weeks.');
    expect(weeksAfterSplit(3, 3)).toBe('Each of the 3 then usually takes 1 week.');
  });
});

describe('steps in words', () => {
  const from = { hip: 130, shank: -20, straddle: 0 };
  const to = { hip: 90, shank: -20, straddle: 0 };

  it('stand with their moment, part and what they add', () => {
    const shown = shownSteps({ from, to, count: 2, name: 'The rung' });
    if ('problem' in shown) throw new Error(shown.problem);
    // Half of the way from 0.1400 to 0.1728 of body weight x height is 0.1564: 108.7 degrees.
    expect(shown.start).toEqual({ shape: '130°', moment: '0.1400', part: '62.2 %' });
    expect(shown.steps).toMatchObject([
      { shape: '108.7°', name: 'Opened to 108.7°', part: '69.5 %', weight: 0.695 },
      { shape: '90°', name: 'The rung', moment: '0.1728', part: '76.8 %' },
    ]);
    // Even in degrees is 110: 0.1554 (own statics, Winter 2009, Drillis & Contini 1966).
    expect(shown.besides).toBe(
      'They add from 0.0164 to 0.0165 each; in even degrees it would be from 0.0154 to 0.0175.',
    );
    expect(shown.doubt).toBe('');
  });

  it('say when they are too small to see, and when there are none', () => {
    const small = shownSteps({ from, to: { ...to, hip: 120 }, count: 4, name: '' });
    expect('doubt' in small && small.doubt).toContain('less than 5°');
    expect(shownSteps({ from: to, to: from, count: 2, name: '' })).toEqual({
      problem: expect.stringContaining('no harder than the first'),
    });
  });

  it('are read from what was typed', () => {
    expect(readShape({ hip: '92,5', shank: '-20', straddle: '0' })).toEqual({
      hip: 92.5,
      shank: -20,
      straddle: 0,
    });
    for (const hip of ['', ' ', 'wide', '181', '-91'])
      expect(readShape({ hip, shank: '0', straddle: '0' })).toBeUndefined();
    expect(shapeInWords({ hip: 0, shank: -45, straddle: 30 })).toBe('0°, shins -45°, straddle 30°');
  });

  it('by target are even, whole where things are counted, and end on the mark', () => {
    expect(evenTargets(0, 12, 3, 'hold')).toEqual([4, 8, 12]);
    expect(evenTargets(5, 10, 3, 'hold')).toEqual([6.7, 8.3, 10]);
    expect(evenTargets(5, 10, 3, 'reps')).toEqual([7, 8, 10]);
  });
});
