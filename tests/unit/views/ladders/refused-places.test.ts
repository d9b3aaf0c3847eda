import { describe, expect, it } from 'vitest';
import { ladderChange } from '#lib/schemas/ladder.ts';
import { refusedPlaces } from '#lib/views/ladders/refused-places.ts';
import { rungBody, rungForm } from '#lib/views/ladders/rung-form.ts';
import { starterLadders } from './starter-ladders.ts';

const ladder = starterLadders().find((one) => one.name === 'Planche holds');
const rungId = ladder?.rungs[3]?.id ?? '';
const form = ladder && rungForm(ladder, rungId);
if (!form) throw new Error('no rung');
const LONG = 'x'.repeat(1_001);

/** Paths that the schema refuses of an edit, as the route sends them. */
function refusedPaths(edit: object): string[] {
  const { error } = ladderChange.safeParse({ base: 'b', edit });
  return [...new Set((error?.issues ?? []).map((issue) => issue.path.join('.')))];
}

describe('a refused field', () => {
  it('is called what the form calls it, with its control', () => {
    expect(
      refusedPlaces({
        'edit.rung.pass.sets': 'at least 1 set',
        'edit.drill.weights.wrist-back': 'at most 1',
        'edit.swaps.2.insteadId': 'choose a rung',
        'edit.steps.0.pass.target': 'write a number',
        'edit.openings.1.needsAll.0.2': 'stands at or after',
        'edit.openings.1.needsAll': 'asks for nothing',
        name: 'write a name',
      }),
    ).toEqual([
      { id: 'rung-sets', name: 'Sets', message: 'at least 1 set' },
      { id: 'weight-wrist-back', name: 'Stress, wrist bent back', message: 'at most 1' },
      { id: 'swap-2-instead', name: 'Swap 3, do instead', message: 'choose a rung' },
      { id: 'step-0-target', name: 'Target of step 1', message: 'write a number' },
      { id: 'opening-1-need-0-2', name: 'Opening 2, a rung it asks for', message: 'stands at or after' },
      { id: 'opening-1-more', name: 'Opening 2, what must stand before', message: 'asks for nothing' },
      { id: 'ladder-name', name: 'Name of the ladder', message: 'write a name' },
    ]);
  });

  it('that no form shows is told by what is wrong, never by its path', () => {
    expect(refusedPlaces({ 'edit.rungIds': 'must name each rung in use once' })).toEqual([
      { id: null, name: '', message: 'must name each rung in use once' },
    ]);
  });

  const body = rungBody(form);
  const bad = {
    ...body,
    rung: {
      ...body.rung,
      name: '',
      note: LONG,
      usualWeeks: '0',
      pass: { sets: '0', target: 'x', days: '0', tries: '101' },
    },
    drill: {
      ...body.drill,
      secondsPerRep: '0',
      share: '101',
      helpingShare: '101',
      shareSource: LONG,
      camera: LONG,
      weights: { ...body.drill.weights, neck: '2' },
    },
    swaps: [{ insteadId: '', tissue: 'neck', support: null, why: '' }],
  };
  const opening = { opens: '', needsAll: [['']], orOnSupports: [], under18CoachTick: false, words: '' };
  it.each([
    ['a rung', { act: 'rung', rungId, drillFor: 'all', ...bad }],
    ['a new rung', { act: 'add-rung', above: 'x', ...bad, swaps: undefined }],
    [
      'the ladder itself',
      { act: 'about', name: '', partId: 'x', family: 'balance', clean: LONG, faults: [] },
    ],
    [
      'steps',
      {
        act: 'split',
        rungId,
        tissue: null,
        steps: [{ name: '', pass: { ...body.rung.pass, target: 'x' }, weight: null }],
      },
    ],
    [
      'openings',
      { act: 'openings', openings: [opening, { ...opening, opens: rungId, needsAll: [], words: 'w' }] },
    ],
  ])('of %s has a name, whatever is typed wrong', (_what, edit) => {
    const paths = refusedPaths(edit).filter((path) => path !== 'edit' && path !== 'edit.swaps');
    expect(paths.length).toBeGreaterThan(1);
    const places = refusedPlaces(Object.fromEntries(paths.map((path) => [path, 'wrong'])));
    expect(paths.filter((_path, index) => places[index]?.id === null)).toEqual([]);
  });
});
