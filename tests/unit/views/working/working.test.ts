import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runChecks } from '#lib/checks/run.ts';
import type { Flagged } from '#lib/domain/finding.ts';
import { CHECK_KINDS, type CheckKind } from '#lib/domain/vocabulary.ts';
import { isOfLoad } from '#lib/views/working/load-criticism.ts';
import { workingView } from '#lib/views/working/working.ts';
import { anyLife, told } from '../../checks/properties/any-history.ts';

/** One real finding of each kind, as random clients raise them; pain that is told by check-ins, not by the intake alone. */
const found = new Map<CheckKind, Flagged>();
for (const life of fc.sample(anyLife, { numRuns: 400, seed: 20_261_126 })) {
  if (found.size === CHECK_KINDS.length) break;
  const { history, asOf } = told(life);
  for (const each of runChecks(history, asOf))
    if (each.status === 'flagged' && !found.has(each.kind) && each.evidence.checkIns !== 0)
      found.set(each.kind, each);
}

/** Kinds that are not judged on one scale: a yes, or a test of two counts. */
const WITHOUT_RULER: readonly CheckKind[] = [
  'danger-sign',
  'one-side-fault',
  'stacked-stress',
  'step-up-earned',
];

const view = (finding: Flagged, settingsVersion = 0) =>
  workingView(
    { ...finding, closedAt: null, closedWhy: null, settingsVersion, rulesVersion: '2026.3' },
    { today: new Date('2026-11-26T08:00:00Z'), zone: 'UTC' },
  );

describe('the working of a reason', () => {
  it.each(CHECK_KINDS)('%s says everything: inputs, formula, thresholds, days, doubt', (kind) => {
    const finding = found.get(kind);
    if (!finding) throw new Error(`no random client raised ${kind}`);
    const shown = view(finding);
    expect(shown.title).toMatch(/^[A-Z]/);
    expect(shown.inputs.length).toBeGreaterThan(0);
    for (const input of [...shown.inputs, ...shown.loaded]) {
      expect(input.name).toMatch(/\S/);
      expect(input.said, input.name).toMatch(/\S/);
      expect(input.said, input.name).not.toMatch(/\d{4}-\d{2}-\d{2}|undefined|NaN/);
    }
    expect(shown.formula.length).toBeGreaterThan(20);
    expect(shown.thresholds.length).toBeGreaterThan(0);
    for (const one of shown.thresholds) {
      expect(one.meaning, one.id).toMatch(/\S/);
      expect(one.said, one.id).toMatch(/\d/);
      expect(one.source.length, one.id).toBeGreaterThan(5);
    }
    expect(shown.days).toMatch(/^[\dIU].*\.$/s);
    expect(shown.doubt.length, 'what it does not say').toBeGreaterThan(20);
    expect(finding.clears).not.toBe('');
    expect(shown.criticism !== undefined).toBe(isOfLoad(kind));
  });

  it('says by which numbers and rules it was judged', () => {
    const [finding] = found.values();
    if (!finding) throw new Error('nothing was raised');
    expect(view(finding).under).toBe('By the defaults, rules of 2026.3.');
    expect(view(finding, 4).under).toBe('By version 4 of the team’s numbers, rules of 2026.3.');
  });

  it.each(CHECK_KINDS.filter((kind) => !WITHOUT_RULER.includes(kind) && kind !== 'no-let-up'))(
    '%s stands on its scale, with the thresholds that decided',
    (kind) => {
      const finding = found.get(kind);
      const ruler = finding && view(finding).ruler;
      if (!ruler) throw new Error(`${kind} has no ruler`);
      expect(ruler.marks.length).toBeGreaterThan(0);
      expect(ruler.value.at).toBeLessThanOrEqual(ruler.end);
      expect(ruler.ticks[0]).toBe(0);
      expect(ruler.ticks.at(-1)).toBe(ruler.end);
      for (const mark of ruler.marks) {
        expect(mark.at).toBeLessThanOrEqual(ruler.end);
        expect(mark.at).toBeGreaterThanOrEqual(0);
      }
      expect(ruler.value.said).toMatch(/\d/);
    },
  );

  it.each(WITHOUT_RULER)('%s has no scale of one number', (kind) => {
    const finding = found.get(kind);
    expect(finding && view(finding).ruler).toBeUndefined();
  });

  it('names what loaded a sore place apart from what it is computed from', () => {
    const finding = found.get('pain-rising');
    const shown = finding && view(finding);
    expect(shown?.loaded.length).toBeGreaterThan(0);
    expect(shown?.inputs.some((input) => input.said.includes('BW s in'))).toBe(false);
  });

  it('says what a load jump loaded against its usual week, thousands with a comma', () => {
    const finding = found.get('load-jump');
    if (!finding) throw new Error('no load-jump');
    const fact = { name: 'neck, 7 days against usual 120', value: 1300, unit: 'BW s' };
    const shown = view({ ...finding, working: { ...finding.working, inputs: [fact] } });
    expect(shown.loaded).toEqual([{ name: 'Neck', said: '1,300 BW s in 7 days, usual 120' }]);
    expect(shown.inputs).toEqual([]);
  });

  it('shows the thresholds as they were in force, not as they are by default', () => {
    const finding = found.get('side-gap');
    if (!finding) throw new Error('no side-gap');
    const thresholds = finding.working.thresholds.map((one) =>
      one.id === 'sideGap.watchPercent' ? { ...one, value: 13 } : one,
    );
    const shown = view({ ...finding, working: { ...finding.working, thresholds } });
    expect(shown.ruler?.marks[0]).toMatchObject({ at: 13, said: '13' });
  });
});
