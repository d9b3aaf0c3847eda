import { describe, expect, it } from 'vitest';
import type { HistoryPlanItem } from '#lib/domain/history.ts';
import type { StepDraft } from '#lib/planning/steps/step-types.ts';
import { draftToPlan } from '#lib/views/step-to-plan.ts';
import { aPlanItem } from '#tests/fixtures/history-builders.ts';

const TODAY = '2026-11-25';
function draft(items: HistoryPlanItem[], over: Partial<StepDraft> = {}): StepDraft {
  const stages = [{ from: TODAY, items, why: 'Because' }];
  return { stages, dropSkills: [], film: null, limit: null, does: [], words: 'To the client', ...over };
}
const old = aPlanItem({ rungId: 'old' });
const other = aPlanItem({ rungId: 'other' });
const lines = (...asked: Parameters<typeof draftToPlan>) =>
  draftToPlan(...asked)?.lines.map((line) => `${line.act} ${line.rungId} ${line.sets}`);

describe('a proposed step as lines for the plan editor', () => {
  it('puts a new rung, which takes the place of the old one, and leaves the rest alone', () => {
    const next = aPlanItem({ rungId: 'next', sets: 4 });
    expect(lines(draft([other, next]), [other, old], 'reason')).toEqual(['put next 4']);
  });

  it('puts a line that is dosed anew', () => {
    expect(lines(draft([other, { ...old, sets: 2 }]), [other, old], 'reason')).toEqual(['put old 2']);
  });

  it('puts only the harder rung of a pyramid', () => {
    const easier = { ...old, sets: 3, pairedWith: 'next' };
    const harder = aPlanItem({ rungId: 'next', sets: 4, pairedWith: 'old' });
    expect(lines(draft([easier, harder]), [old], 'reason')).toEqual(['put next 4']);
  });

  it('takes lines out where a goal is dropped', () => {
    const dropped = draft([other], { dropSkills: ['Handstand'] });
    expect(draftToPlan(dropped, [other, old], 'reason')).toMatchObject({
      source: 'reason',
      reasonId: 'reason',
      lines: [{ act: 'drop', rungId: 'old' }],
      dropSkills: ['Handstand'],
      why: 'Because',
      notes: 'To the client',
    });
  });

  it('is nothing where only the order changes, or no version is proposed', () => {
    expect(draftToPlan(draft([old, other]), [other, old], 'reason')).toBeUndefined();
    expect(draftToPlan({ ...draft([]), stages: [] }, [old], 'reason')).toBeUndefined();
  });
});
