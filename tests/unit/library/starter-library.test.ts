import { describe, expect, it } from 'vitest';
import { FAMILIES, FAULTS, MEASURES, SUPPORTS, TISSUES } from '#lib/domain/vocabulary.ts';
import { libraryRows } from '#lib/library/copy-plan.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';

const { ladders, shareSources, supports } = STARTER_LIBRARY;
const rungs = ladders.flatMap((ladder) => ladder.rungs);
const keys = new Set(rungs.map((rung) => rung.key));
const EQUIPMENT = [
  'hard-floor',
  'wall',
  'box',
  'block',
  'parallel-bars',
  'bar',
  'rings',
  'stick',
  'mat',
  'scale',
];

describe('the starter library', () => {
  it('has 37 ladders and 229 rungs under unique keys', () => {
    expect(ladders).toHaveLength(37);
    expect(rungs).toHaveLength(229);
    expect(keys.size).toBe(229);
    expect(new Set(ladders.map((ladder) => ladder.key)).size).toBe(37);
  });

  it('numbers the rungs of each ladder from 1 without a gap', () => {
    for (const ladder of ladders) {
      expect(ladder.rungs.map((rung) => rung.key)).toEqual(
        ladder.rungs.map((_, index) => `${ladder.key}.${index + 1}`),
      );
    }
  });

  it.each(ladders.map((ladder) => [ladder.key, ladder] as const))(
    'ladder %s says all it must',
    (_key, ladder) => {
      for (const text of [ladder.skill, ladder.part, ladder.name, ladder.clean, ladder.camera]) {
        expect(text.trim()).not.toBe('');
      }
      expect(FAMILIES).toContain(ladder.family);
      expect(ladder.faults.length).toBeGreaterThan(0);
      expect(FAULTS).toEqual(expect.arrayContaining(ladder.faults));
      for (const opening of ladder.openings) {
        expect(ladder.rungs.map((rung) => rung.key)).toContain(opening.opens);
        expect([...keys]).toEqual(expect.arrayContaining(opening.needsAll.flat()));
        expect(SUPPORTS).toEqual(expect.arrayContaining(opening.orOnSupports ?? []));
      }
    },
  );

  it.each(rungs.map((rung) => [rung.key, rung] as const))('rung %s has the right shape', (_key, rung) => {
    expect(rung.name.trim()).not.toBe('');
    expect(MEASURES).toContain(rung.measure);
    expect(['both', 'each', 'leg']).toContain(rung.per);
    expect(rung.pass.sets).toBeGreaterThanOrEqual(1);
    expect(rung.pass.days).toBeGreaterThanOrEqual(1);
    expect(Number.isFinite(rung.pass.target)).toBe(true);
    expect(rung.pass.tries !== undefined).toBe(rung.measure === 'made-tried');
    expect(rung.secondsPerRep !== undefined).toBe(rung.measure === 'reps' || rung.measure === 'made-tried');
    expect(rung.usualWeeks).toBeGreaterThan(0);
    expect(rung.equipment.length).toBeGreaterThan(0);
    expect(EQUIPMENT).toEqual(expect.arrayContaining(rung.equipment));
    expect(Object.keys(rung.weights).length).toBeGreaterThan(0);
    expect(TISSUES).toEqual(expect.arrayContaining(Object.keys(rung.weights)));
    for (const weight of Object.values(rung.weights)) {
      expect(weight).toBeGreaterThan(0);
      expect(weight).toBeLessThanOrEqual(1);
    }
    expect(rung.share === undefined).toBe(rung.shareSource === undefined);
    if (rung.shareSource !== undefined) expect(Object.keys(shareSources)).toContain(rung.shareSource);
    expect(rung.share ?? 1).toBeLessThanOrEqual(1);
    if (rung.helpingShare !== undefined) expect((rung.share ?? 0) + rung.helpingShare).toBeCloseTo(1, 10);
  });

  it('keeps single rows as the trade wrote them', () => {
    const byKey = new Map(rungs.map((rung) => [rung.key, rung]));
    expect(byKey.get('H3.4')?.pass).toEqual({ sets: 3, target: 20, days: 3 });
    expect(byKey.get('H1.7')?.pass).toEqual({ sets: 1, target: 8, tries: 10, days: 3 });
    expect(byKey.get('LM.3')?.family).toBe('bent-arm-pull');
    expect(byKey.get('LV.6')?.per).toBe('leg');
    expect(byKey.get('OA.7')).toMatchObject({ per: 'each', share: 0.92, helpingShare: 0.08 });
    expect(byKey.get('X3.4')?.pass).toEqual({ sets: 1, target: -18, days: 2 });
    expect(byKey.get('MU.3')?.weights['shoulder-behind']).toBe(0.9);
  });

  it('marks what brings the head below the heart', () => {
    const down = rungs.filter((rung) => rung.upsideDown).map((rung) => rung.key);
    expect(down).toHaveLength(112);
    for (const key of [
      'H1.1',
      'H2.2',
      'H5.1',
      'P2.1',
      'P4.6',
      'U1.3',
      'U3.3',
      'OA.11',
      'LV.1',
      'BK.2',
      'X5.3',
    ])
      expect(down).toContain(key);
    for (const key of [
      'H2.1',
      'P1.2',
      'U1.2',
      'PL.14',
      'LV.2',
      'BK.1',
      'PU.6',
      'DP.3',
      'LS.7',
      'X1.4',
      'X5.1',
    ])
      expect(down).not.toContain(key);
  });

  it('has every support of the vocabulary, and soft ground does not count', () => {
    expect(supports.map((support) => support.key)).toEqual([...SUPPORTS]);
    expect(
      supports.filter((support) => support.resultsCount === false).map((support) => support.key),
    ).toEqual(['soft-ground']);
  });

  it('shares one drill among rungs that differ in the pass mark only', () => {
    let next = 0;
    const rows = libraryRows(STARTER_LIBRARY, () => String(++next));
    expect(rows.rungs).toHaveLength(229);
    const drillOf = (key: string) => rows.rungs.find((row) => row.rung.key === key)?.drillId;
    expect(drillOf('H5.1')).toBe(drillOf('H5.6'));
    expect(drillOf('H3.5')).not.toBe(drillOf('H3.6'));
    expect(new Set(rows.rungs.map((row) => row.drillId)).size).toBe(rows.drills.length);
  });
});
