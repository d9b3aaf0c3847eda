import { describe, expect, it } from 'vitest';
import type { HistoryPlanItem } from '#lib/domain/history.ts';
import type { StepDraft } from '#lib/planning/steps/step-types.ts';
import { draftToPlan } from '#lib/views/step-to-plan.ts';
import { aPlanItem } from '#tests/fixtures/history-builders.ts';

const TODAY = '2026-11-25';
function draft(items: HistoryPlanItem[], over: Partial<StepDraft> = {}, rungId?: string): StepDraft {
  const stages = [{ from: TODAY, items, why: 'Because', rungId }];
  return { stages, dropSkills: [], film: null, limit: null, does: [], words: 'To the client', ...over };
}
const old = aPlanItem({ rungId: 'old' });
const other = aPlanItem({ rungId: 'other' });
const lines = (...asked: Parameters<typeof draftToPlan>) =>
  draftToPlan(...asked)?.lines.map((line) => `${line.act} ${line.rungId} ${line.sets}`);

describe('a proposed step as lines for the plan editor', () => {
  it('puts a new rung in the place of the old one, and leaves the rest alone', () => {
    const next = aPlanItem({ rungId: 'next', sets: 4 });
    const found = draftToPlan(draft([other, next], {}, 'old'), [other, old], 'reason');
    expect(found?.lines).toMatchObject([{ act: 'put', rungId: 'next', sets: 4, replaces: 'old' }]);
  });

  it('puts a line that is dosed anew', () => {
    expect(lines(draft([other, { ...old, sets: 2 }]), [other, old], 'reason')).toEqual(['put old 2']);
  });

  it('puts both rungs of a new pyramid, each naming the other; the harder takes no place', () => {
    const easier = { ...old, sets: 2, pairedWith: 'next' };
    const harder = aPlanItem({ rungId: 'next', sets: 4, pairedWith: 'old' });
    expect(draftToPlan(draft([easier, harder], {}, 'old'), [old], 'reason')?.lines).toMatchObject([
      { act: 'put', rungId: 'old', sets: 2, replaces: 'old', pairedWith: 'next' },
      { act: 'put', rungId: 'next', sets: 4, replaces: null, pairedWith: 'old' },
    ]);
  });

  it('takes the half out that goes with a pyramid, in its own session only', () => {
    const easier = { ...old, pairedWith: 'harder' };
    const harder = aPlanItem({ rungId: 'harder', pairedWith: 'old' });
    const elsewhere = aPlanItem({ session: 'B', rungId: 'old' });
    const back = aPlanItem({ rungId: 'back', sets: 5 });
    const found = draftToPlan(draft([back], {}, 'old'), [easier, harder, elsewhere], 'reason');
    expect(
      found?.lines.map(({ act, session, rungId, replaces }) => [act, session, rungId, replaces]),
    ).toEqual([
      ['put', 'A', 'back', 'old'],
      ['drop', 'A', 'harder', undefined],
      ['drop', 'B', 'old', undefined],
    ]);
  });

  it('proposes left and right in one line where they are alike', () => {
    const apart = (rungId: string) =>
      (['left', 'right'] as const).map((side) => aPlanItem({ rungId, side, sets: 4 }));
    const found = draftToPlan(draft(apart('next'), {}, 'old'), apart('old'), 'reason');
    expect(found?.lines).toMatchObject([{ rungId: 'next', side: 'both', replaces: 'old' }]);
  });

  it('says what else the step would bring: later versions, a film', () => {
    const cut = { ...old, sets: 2 };
    const stages = [
      { from: TODAY, items: [cut], why: '60 % of the sets, to come back in steps' },
      { from: '2026-12-02', items: [cut], why: '80 % of the sets, to come back in steps' },
      { from: '2026-12-09', items: [old], why: 'As before the cut' },
    ];
    expect(draftToPlan({ ...draft([]), stages }, [old], 'reason')).toMatchObject({
      lines: [{ act: 'put', rungId: 'old', sets: 2 }],
      later: ['from Wed 2 Dec 80 % of the sets, to come back in steps', 'from Wed 9 Dec as before the cut'],
    });
    expect(draftToPlan(draft([cut]), [old], 'reason')?.later).toEqual([]);
    const film = {
      rungId: 'old',
      side: 'left' as const,
      angle: 'from behind',
      byDate: '2026-12-02',
      words: '',
    };
    expect(draftToPlan(draft([cut], { film }), [old], 'reason')?.later).toEqual([
      'a film asked for by Wed 2 Dec',
    ]);
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
