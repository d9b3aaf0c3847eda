import { describe, expect, it } from 'vitest';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import { changedFields } from '#lib/views/ladders/changed-fields.ts';
import type { LadderPerson } from '#lib/views/ladders/ladder-facts.ts';
import { ladderTouches } from '#lib/views/ladders/ladder-touches.ts';
import { saidChange } from '#lib/views/ladders/said-change.ts';
import { touchesInWords } from '#lib/views/ladders/touches-in-words.ts';
import { ladderOf, rungOf } from '#tests/unit/planning/ladders/ladder-builders.ts';

const before = ladderOf([rungOf('a'), rungOf('b'), rungOf('c')]);
const person = (name: string, over: Partial<LadderPerson>): LadderPerson => ({
  clientId: name,
  name,
  standsOn: [],
  planned: [],
  assessed: false,
  limits: [],
  ...over,
});
const PEOPLE = [
  person('Asha', { standsOn: [{ rungId: 'a', side: 'both' }], planned: [{ rungId: 'a', side: 'both' }] }),
  person('Bela', {
    standsOn: [
      { rungId: 'a', side: 'left' },
      { rungId: 'b', side: 'right' },
    ],
  }),
  person('Cyra', { planned: [{ rungId: 'c', side: 'both' }] }),
];
const told = (after: LadderState) =>
  ladderTouches(before, after, PEOPLE).map((touch) => [
    touch.words,
    touch.clients.map((one) => one.name).join(),
  ]);
const withRung = (id: string, over: object): LadderState => ({
  ...before,
  rungs: before.rungs.map((rung) => (rung.id === id ? { ...rung, ...over } : rung)),
});

describe('whom an edit touches', () => {
  it('is nobody where nothing changes, and nobody who is elsewhere', () => {
    expect(told(before)).toEqual([]);
    expect(
      told(withRung('c', { pass: { sets: 1, target: 1, days: 1, tries: null }, needsFilm: true })),
    ).toEqual([['Rung b: next rung Rung c, 4 × 10 s on 2 days → Rung c, 1 × 1 s on 1 day', 'Bela']]);
  });

  it('is by name who stands there, once each, with the mark before and after', () => {
    expect(told(withRung('a', { pass: { sets: 5, target: 10, days: 2, tries: null } }))).toEqual([
      ['Rung a: pass mark 4 × 10 s on 2 days → 5 × 10 s on 2 days', 'Asha,Bela'],
    ]);
  });

  it('is who stands there when a film is asked for or the usual time differs', () => {
    expect(told(withRung('b', { needsFilm: true, usualWeeks: 1 }))).toEqual([
      ['Rung b: film to pass not needed → needed', 'Bela'],
      ['Rung b: usual time 4 weeks → 1 week', 'Bela'],
    ]);
  });

  it('is who has it planned, for what the plan and the loads read', () => {
    const after = {
      ...before,
      drills: before.drills.map((drill) =>
        drill.id === 'drill-c' ? { ...drill, share: 0.9, weights: { 'shoulder-forward': 0.8 } } : drill,
      ),
    };
    expect(told(after)).toEqual([
      ['Rung c: share of body weight 100 % → 90 %', 'Cyra'],
      ['Rung c: weight on wrist bent back 0.9 → 0', 'Cyra'],
      ['Rung c: weight on shoulder forward 0.62 → 0.8', 'Cyra'],
    ]);
  });

  it('is who meets another next rung after an order, a new rung or a retirement', () => {
    const [a, b, c] = before.rungs;
    if (!a || !b || !c) throw new Error('three rungs');
    const next = (words: string) => `Rung a: next rung Rung b, 4 × 10 s on 2 days → ${words}`;
    expect(told({ ...before, rungs: [b, a, c] })).toEqual([
      [next('Rung c, 4 × 10 s on 2 days'), 'Asha,Bela'],
      ['Rung b: next rung Rung c, 4 × 10 s on 2 days → Rung a, 4 × 10 s on 2 days', 'Bela'],
    ]);
    expect(told({ ...before, rungs: [a, { ...b, retired: true }, c] })).toEqual([
      [next('Rung c, 4 × 10 s on 2 days'), 'Asha,Bela'],
      ['Rung b: it was in use → retired', 'Bela'],
    ]);
    expect(told({ ...before, retired: true }).map(([, names]) => names)).toEqual([
      'Asha,Bela',
      'Bela',
      'Cyra',
    ]);
  });

  it('is who stands anywhere on the ladder when clean or the faults mean something else', () => {
    expect(
      told({ ...before, clean: 'hips level' }).map(([words, names]) => [words?.slice(0, 22), names]),
    ).toEqual([
      ['Rung a: what clean mea', 'Asha,Bela'],
      ['Rung b: what clean mea', 'Bela'],
    ]);
  });

  it('asks with the number of clients, each counted once', () => {
    const touches = ladderTouches(before, { ...before, clean: 'hips level' }, PEOPLE);
    const words = touchesInWords(touches);
    expect([words.question, words.agree]).toEqual([
      'This touches 2 clients',
      'Change it for these 2 clients',
    ]);
    expect(touches.map(words.count)).toEqual(['2 clients', '1 client']);
    expect(words.since).toEqual([expect.stringContaining('from the next check on')]);
  });
});

describe('whom a change of swaps touches', () => {
  const wrist = {
    tissue: 'wrist-back',
    region: null,
    side: null,
    rule: 'none',
    percent: null,
    from: '2026-11-01',
    until: null,
    who: 'coach',
  } as const;
  const people = [
    person('Asha', { standsOn: [{ rungId: 'a', side: 'both' }], limits: [wrist] }),
    person('Bela', { planned: [{ rungId: 'a', side: 'left' }], limits: [{ ...wrist, tissue: 'neck' }] }),
    person('Cyra', { planned: [{ rungId: 'a', side: 'both' }], limits: [wrist] }),
    person('Dara', { standsOn: [{ rungId: 'a', side: 'both' }] }),
    person('Esra', { planned: [{ rungId: 'b', side: 'both' }], limits: [wrist] }),
  ];

  it('is who has the rung, under a limit that keeps from it: nobody else is offered a swap', () => {
    const swaps = [
      { insteadId: 'a', tissue: 'wrist-back', support: 'fists', why: '' },
      { insteadId: 'b', tissue: 'wrist-back', support: null, why: '' },
      { insteadId: 'gone', tissue: 'wrist-back', support: null, why: '' },
    ];
    const touches = ladderTouches(
      before,
      withRung('a', { swaps }),
      people,
      new Map([['b', 'Rung b, Planche']]),
    );
    expect(touches.map(({ words, clients }) => [words, clients.map((one) => one.name)])).toEqual([
      [
        'Rung a: swaps to spare wrist bent back: none → on fists or Rung b, Planche or a rung not in use',
        ['Asha', 'Cyra'],
      ],
    ]);
  });
});

describe('whom a change of openings touches', () => {
  const opening = {
    opens: 'b',
    needsAll: [['x', 'y'], ['z']],
    orOnSupports: [],
    under18CoachTick: false,
    words: 'w',
  };
  const names = new Map([
    ['x', 'X'],
    ['y', 'Y'],
    ['z', 'Z'],
  ]);
  const people = [
    person('Asha', { standsOn: [{ rungId: 'a', side: 'both' }] }),
    person('Bela', { standsOn: [{ rungId: 'b', side: 'both' }], planned: [{ rungId: 'a', side: 'both' }] }),
    person('Cyra', { planned: [{ rungId: 'a', side: 'both' }] }),
    person('Dara', { standsOn: [{ rungId: 'c', side: 'both' }], assessed: true }),
    person('Esra', {
      standsOn: [
        { rungId: 'c', side: 'left' },
        { rungId: 'a', side: 'right' },
      ],
    }),
  ];

  it('is who has still to meet it, on one side at least, and whose gaps were found with it', () => {
    const touches = ladderTouches(before, { ...before, openings: [opening] }, people, names);
    expect(touches.map(({ words, clients }) => [words, clients.map((one) => one.name).join()])).toEqual([
      ['Rung b: opens with nothing asked → X or Y and Z', 'Asha,Cyra,Dara,Esra'],
    ]);
    expect(touchesInWords(touches).since).toEqual([expect.stringContaining('gap finder goes by it')]);
  });

  it('says supports and the tick for those under 18', () => {
    const other = { ...opening, needsAll: [], orOnSupports: ['wedge' as const], under18CoachTick: true };
    const touches = ladderTouches(
      { ...before, openings: [opening] },
      { ...before, openings: [other] },
      people.slice(0, 1),
      names,
    );
    expect(touches[0]?.words).toBe(
      'Rung b: opens with X or Y and Z → at once on a wedge; under 18 only when the coach allows it',
    );
    expect(changedFields(before, { ...before, openings: [opening] })).toEqual(['openings']);
  });
});

describe('what the audit says of an edit', () => {
  it('names fields, never values', () => {
    const after: LadderState = {
      ...withRung('b', { pass: { sets: 5, target: 10, days: 2, tries: null }, needsFilm: true }),
      clean: 'hips level',
    };
    expect(changedFields(before, after)).toEqual(['clean', 'pass mark of Rung b', 'film needed of Rung b']);
    expect(changedFields(before, before)).toEqual([]);
    expect(changedFields(before, { ...before, retired: true })).toEqual(['retired']);
    expect(changedFields(before, withRung('c', { retired: true }))).toEqual(['retiring of Rung c']);
    const added = { ...before, rungs: [rungOf('z', { drillId: 'drill-a' }), ...before.rungs] };
    expect(changedFields(before, added)).toEqual(['new rung Rung z']);
    expect(changedFields(before, { ...before, rungs: before.rungs.toReversed() })).toEqual(['order']);
    const drills = before.drills.map((drill) =>
      drill.id === 'drill-a' ? { ...drill, camera: 'side' } : drill,
    );
    expect(changedFields(before, { ...before, drills })).toEqual(['drill of Rung a']);
  });

  it('is said with who and when', () => {
    const change = { by: 'Ines', at: new Date('2026-11-25T14:05:09Z'), fields: ['a', 'b', 'c', 'd', 'e'] };
    expect(saidChange(change)).toBe('Ines changed a, b, c, 2 more on 25 Nov at 14:05 UTC');
  });
});
