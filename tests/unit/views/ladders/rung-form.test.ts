import { describe, expect, it } from 'vitest';
import { editLadder } from '#lib/planning/ladders/edit-ladder.ts';
import { ladderChange } from '#lib/schemas/ladder.ts';
import { newRungForm, type RungForm, rungBody, rungForm } from '#lib/views/ladders/rung-form.ts';
import { newRungPage, rungPage } from '#lib/views/ladders/rung-page.ts';
import { starterLadders } from './starter-ladders.ts';

const ladders = starterLadders();
const named = (name: string) => {
  const ladder = ladders.find((one) => one.name === name);
  if (!ladder) throw new Error(`no ladder ${name}`);
  return ladder;
};
const planche = named('Planche holds');
const tuck = planche.rungs[1]?.id ?? '';

function parsed(form: RungForm) {
  return ladderChange.safeParse({
    base: 'base',
    edit: { act: 'rung', rungId: tuck, drillFor: 'all', ...rungBody(form) },
  });
}
/** Fields that are refused, with the first words of why. */
function refused(over: Partial<RungForm>): string[] {
  const form = rungForm(planche, tuck);
  const result = form && parsed({ ...form, ...over });
  return (result?.error?.issues ?? []).map((issue) => `${issue.path.slice(1).join('.')} ${issue.message}`);
}

describe('the form of a rung', () => {
  it('saved as it was opened changes nothing, for every rung of the starter library', () => {
    let rungs = 0;
    for (const ladder of ladders)
      for (const rung of ladder.rungs) {
        const form = rungForm(ladder, rung.id);
        if (!form) throw new Error(rung.name);
        const { edit } = ladderChange.parse({
          base: 'base',
          edit: { act: 'rung', rungId: rung.id, drillFor: 'all', ...rungBody(form) },
        });
        const after = editLadder(ladder, edit, {
          newId: () => 'new',
          used: new Set(ladder.rungs.map((one) => one.id)),
        });
        expect('state' in after && after.state.rungs, rung.name).toEqual(ladder.rungs);
        expect('state' in after && after.state.drills, rung.name).toEqual(ladder.drills);
        rungs += 1;
      }
    expect(rungs).toBe(229);
  });

  it('reads numbers as they are typed', () => {
    const form = rungForm(planche, tuck);
    const edit = form && parsed({ ...form, target: '7,5', share: '97.5', shareSource: 'cp' }).data?.edit;
    expect(edit).toMatchObject({ rung: { pass: { target: 7.5 } }, drill: { share: 0.975 } });
  });

  it.each([
    [{ name: '  ' }, 'rung.name write a name'],
    [{ sets: '0' }, 'rung.pass.sets at least 1 set'],
    [{ sets: '2.5' }, 'rung.pass.sets whole sets'],
    [{ target: '' }, 'rung.pass.target write a number'],
    [{ target: '-3' }, 'rung.pass.target must be more than 0'],
    [{ days: 'two' }, 'rung.pass.days whole days'],
    [{ usualWeeks: '0' }, 'rung.usualWeeks at least half a week'],
    [{ share: '120' }, 'drill.share at most 100 %'],
    [
      { shareSource: '' },
      'drill.shareSource write where the share comes from; "common practice, no source" will do',
    ],
    [{ measure: 'reps' }, 'drill.secondsPerRep write how many seconds one rep or try is under load'],
    [{ measure: 'made-tried', secondsPerRep: '4' }, 'rung.pass.tries write of how many tries'],
    [
      { measure: 'made-tried', secondsPerRep: '4', target: '5', tries: '4' },
      'rung.pass.tries must be at least the 5 that are to be made',
    ],
    [
      { per: 'each', share: '90', helpingShare: '20' },
      'drill.helpingShare and the working hand together are more than 100 %',
    ],
  ] as [Partial<RungForm>, string][])('refuses %o', (over, words) => {
    expect(refused(over)).toContain(words);
  });

  it('refuses a drill that loads nothing, and the same swap twice', () => {
    const form = rungForm(planche, tuck);
    const nothing = Object.fromEntries(
      Object.keys(form?.weights ?? {}).map((tissue) => [tissue, '']),
    ) as RungForm['weights'];
    expect(refused({ weights: nothing })).toEqual([
      'drill.weights give at least one tissue a weight above 0',
    ]);
    const weights = { ...nothing, neck: '1.2' };
    expect(refused({ weights })).toContain('drill.weights.neck at most 1');
    const swap = { insteadId: tuck, tissue: 'neck', support: 'wedge', why: '' } as const;
    expect(refused({ swaps: [swap, swap] })).toEqual(['swaps.1.insteadId is there already for this tissue']);
  });

  it('of a new rung starts as the drill below, without its name and target', () => {
    const page = newRungPage(planche);
    expect(page).toMatchObject({ like: 'Full', above: planche.rungs.at(-1)?.id });
    expect(page.places[0]?.label).toBe('above 15 Full');
    expect(page.form).toMatchObject({ name: '', target: '', sets: '3', measure: 'hold' });
    expect(newRungForm({ ...planche, rungs: [], drills: [] }, null)).toMatchObject({
      name: '',
      measure: 'hold',
    });
    expect(newRungPage({ ...planche, rungs: [], drills: [] })).toMatchObject({
      above: null,
      like: null,
      places: [],
    });
  });

  it('names the rungs that share the drill, and where the rung stands', () => {
    expect(rungPage({ ladder: planche, swapRungs: [] }, tuck)).toMatchObject({
      title: 'Tuck',
      place: 'Rung 2 of 15 of Planche holds.',
      sharedWith: ['3 Tuck'],
    });
    const retired = {
      ...planche,
      rungs: planche.rungs.map((rung) => (rung.id === tuck ? { ...rung, retired: true } : rung)),
    };
    expect(rungPage({ ladder: retired, swapRungs: [] }, tuck)?.place).toContain(
      'what was logged on it stays',
    );
    expect(rungPage({ ladder: planche, swapRungs: [] }, 'nobody')).toBeUndefined();
  });
});
