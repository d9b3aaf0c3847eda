import { describe, expect, it } from 'vitest';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { findGaps } from '#lib/planning/gaps/find-gaps.ts';
import type { GapContext } from '#lib/planning/gaps/gap-context.ts';
import type { Assessment, SideSeen } from '#lib/planning/gaps/gap-types.ts';
import { gapDraft } from '#lib/views/gaps/gap-draft.ts';
import { gapBody, gapForm } from '#lib/views/gaps/gap-form.ts';
import { gapFound } from '#lib/views/gaps/gap-found.ts';
import { assessed, CONTEXT, GAP_LIBRARY } from '#tests/fixtures/gap-library.ts';

const STANDS = { X1: { film: 'steady' }, X2: { film: 'steady' } } as const;

function look(
  aim: string,
  known: Record<string, Partial<SideSeen>>,
  over: Partial<Assessment> = {},
  more: Partial<GapContext> = {},
) {
  const context = { ...CONTEXT, ...more };
  const { asks, assessment } = assessed(aim, known, over);
  const result = findGaps(asks, assessment, context);
  return { result, found: gapFound(result, context), context, asks, assessment };
}
const LIFT = {
  ...STANDS,
  P1: { film: 'steady' },
  P3: { film: 'drops' },
  P4: { rungId: 'P4.1', sets: 4, value: 3 },
} as const;

describe('what the page says', () => {
  it('how many parts are open, how few drills cover them, and what is not known', () => {
    expect(look('P4.4', LIFT).found.summary).toBe(
      '2 parts are open; 1 drill covers all of them. 7 parts are not known: film one slow lowering or test them first.',
    );
  });
  it('which part is left, and why, with the words of the limit', () => {
    const limit: HistoryLimit = {
      tissue: null,
      region: null,
      side: null,
      rule: 'no-overhead',
      percent: null,
      from: '2026-11-01',
      until: '2026-12-11',
      who: 'physiotherapist',
    };
    const { found } = look('H5.4', { ...STANDS, H4: { film: 'drops' } }, {}, { limits: [limit] });
    expect(found.summary).toContain(
      '1 part is open; no plan covers all of them: 0 drills cover what can be covered now, Under-balance is left.',
    );
    expect(found.left[0]?.why).toEqual([
      'Toe pull, chest to wall, off and back is ruled out by a limit (Nothing overhead, until Fri 11 Dec).',
    ]);
  });
  it('why each drill is in, what covers what, and in which session', () => {
    const { found } = look('P4.4', LIFT);
    expect(found.drills).toHaveLength(1);
    expect(found.drills[0]).toMatchObject({
      name: 'Lift',
      where: 'session A',
      why: [
        'Covers Full range, up: its own drill.',
        'Covers Full range, down: loads the same tissues at least 0.9 times as hard.',
      ],
    });
    expect(found.parts.find(({ key }) => key === 'P3')).toMatchObject({
      standing: 'open',
      coveredBy: 'Lift',
    });
  });
  it('that a limit leaves a drill fewer sets', () => {
    const limit: HistoryLimit = {
      tissue: 'shoulder-forward',
      region: null,
      side: null,
      rule: 'reduced',
      percent: 50,
      from: '2026-11-01',
      until: null,
      who: 'physiotherapist',
    };
    const known = { PL: { rungId: 'PL.2', sets: 5, value: 4 } };
    const notes = (limits: HistoryLimit[]) =>
      look('PL.7', known, {}, { limits }).found.drills.find(({ name }) => name === 'Planche holds')?.notes;
    expect(notes([limit])?.[0]).toMatch(/^Fewer sets under a limit: .*50 %.*, until further word\.$/);
    expect(notes([])).toEqual([]);
  });
  it('why a drill is one rung back: the rung itself asks for kit that is not there', () => {
    const known = { H4: { film: 'drops' }, X1: { film: 'steady' } } as const;
    const placements = [{ ladderId: 'W1', side: 'both' as const, rungId: 'W1.6', from: '2026-09-01' }];
    const notes = (kit: string[]) =>
      look('H5.4', known, { kit }, { placements }).found.drills.find(({ name }) => name.startsWith('Wrist'))
        ?.notes;
    expect(notes([])).toEqual([
      'One rung back: Heel of hand lifts in box pike asks for box, which is not at hand.',
    ]);
    expect(notes(['box'])).toEqual([]);
  });
  it('a range is asked by its name when that says its number', () => {
    const asked = look('P4.4', LIFT).found.parts;
    expect(asked.find(({ key }) => key === 'X1')?.asked).toBe('Overhead 160°');
    expect(asked.find(({ key }) => key === 'P3')?.asked).toBe('Free, to the floor: 5 x 8 s');
  });
  it('mobility says what it belongs to; parts come worst first', () => {
    const { found } = look('H5.4', { H4: { film: 'drops' }, X1: { film: 'steady' } });
    expect(found.drills.find(({ name }) => name.startsWith('Wrist'))?.why).toEqual([
      'Mobility that belongs to Under-balance: wrist bent back.',
    ]);
    const standings = found.parts.map(({ standing }) => standing);
    expect(standings).toEqual([...standings].sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b)));
  });
});
const ORDER = ['open', 'not-known', 'near', 'covered'];

describe('a draft of the plan', () => {
  it('a line for each rung and side, with why and on what', () => {
    const known = { LN: { rungId: 'LN.4', sets: 5, value: 10 }, PL: { rungId: 'PL.2', sets: 5, value: 4 } };
    const body = new Map([['wrist-back:left' as const, { pain: 4, where: 'left wrist', overUsual: 0 }]]);
    const { result, context } = look('PL.7', known, { kit: ['parallel-bars'] }, { body });
    const draft = gapDraft(result, { context, skill: 'Planche', onDate: '2026-11-25' });
    expect(draft).toMatchObject({
      source: 'gap-finder',
      why: 'Gaps of Planche, assessed on Wednesday 25 November.',
      lines: [
        { session: 'A', rungId: 'LN.3', support: 'parallel-bars', timesPerWeek: 1.5 },
        { session: 'B', rungId: 'PL.2', support: 'parallel-bars', sets: 4, target: 4 },
      ],
    });
    expect(draft.lines[1]?.why).toBe('Covers Planche: its own drill. Done on low parallel bars.');
  });
});

describe('the form', () => {
  it('sends back what it was filled with', () => {
    const { asks, assessment } = look('P4.4', { ...LIFT, H5: { film: 'hurried', pain: 2, clean: false } });
    const model = gapForm({ clientId: 'c', under18: false, library: GAP_LIBRARY, asks, assessment });
    expect(model.skills.map(({ name }) => name)).toContain('Planche');
    const body = gapBody(model, model.parts) as Assessment;
    const number = (value: unknown) => (value === '' ? null : Number(value));
    const read = body.parts.map((part) => ({
      ...part,
      sides: part.sides.map((side) => ({
        ...side,
        rungId: side.rungId || null,
        sets: number(side.sets),
        value: number(side.value),
        pain: number(side.pain),
      })),
    }));
    expect({ ...body, kit: [...body.kit].sort(), parts: read }).toEqual({
      ...assessment,
      kit: [...assessment.kit].sort(),
    });
  });
});
