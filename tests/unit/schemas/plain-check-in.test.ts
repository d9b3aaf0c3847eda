import { describe, expect, test } from 'vitest';
import { plainCheckInSchema, plainFields, plainSetName } from '#lib/schemas/plain-check-in.ts';

const ID = '0f8fad5b-d9cb-469f-a165-70867728950e';
const RUNG = '7c9e6679-7425-40de-944b-e07fc1f90ae7';
const START = {
  id: ID,
  date: '2026-11-24',
  zone: 'Europe/Berlin',
  session: 'A',
  planVersion: '3',
  kind: 'training',
};
const set = (index: number, value: string, more: Record<string, string> = {}) => {
  const name = plainSetName(RUNG, 'left', index);
  return {
    [`value ${name}`]: value,
    [`planned ${name}`]: '20',
    [`label ${name}`]: `Heel pulls, left, set ${index}`,
    ...Object.fromEntries(Object.entries(more).map(([key, text]) => [`${key} ${name}`, text])),
  };
};
const refused = (fields: Record<string, string>) =>
  plainCheckInSchema
    .safeParse({ ...START, ...fields })
    .error?.issues.map(({ path, message }) => [path.join('.'), message]);

describe('the form that works without scripts', () => {
  test('numbers as people write them, a dash for not done, empty for nothing said', () => {
    const body = plainCheckInSchema.parse({
      ...START,
      ...set(1, '12,5 s'),
      ...set(2, '1:05', { broken: 'yes' }),
      ...set(3, '–'),
      ...set(4, ''),
      effort: '7',
      minutes: '45',
      nothingHurts: 'yes',
    });
    expect(body.sets).toMatchObject([
      { rungId: RUNG, side: 'left', index: 1, planned: 20, value: 12.5, how: 'typed', clean: true },
      { index: 2, value: 65, how: 'typed', clean: false },
      { index: 3, value: null, how: 'not-done', clean: false },
    ]);
    expect(body).toMatchObject({ effort: 7, minutes: 45, nothingHurts: true, session: 'A', planVersion: 3 });
  });

  test('the rest as planned, and tries', () => {
    const body = plainCheckInSchema.parse({
      ...START,
      rest: 'as-planned',
      ...set(1, ''),
      ...set(2, '3', { tried: '', plannedTries: '10' }),
      ...set(3, '3', { tried: '8', plannedTries: '10' }),
    });
    expect(body.sets).toMatchObject([
      { index: 1, value: 20, planned: 20, how: 'as-planned' },
      { index: 2, value: 3, tried: 10, how: 'typed' },
      { index: 3, value: 3, tried: 8, how: 'typed' },
    ]);
  });

  test('a day without training leaves out what belongs to a session', () => {
    const body = plainCheckInSchema.parse({ ...START, kind: 'rest', rest: 'as-planned', ...set(1, '5') });
    expect(body).toMatchObject({ kind: 'rest', sets: [], session: null, effort: null });
  });

  test('pain of one place, at each moment told', () => {
    const body = plainCheckInSchema.parse({
      ...START,
      region: 'elbow-inner',
      painSide: 'right',
      painKind: 'joint',
      'pain during': '3',
      'pain after': '6',
      usual: 'no',
    });
    expect(body.pain).toEqual([
      { region: 'elbow-inner', side: 'right', kind: 'joint', moment: 'during', value: 3, usual: false },
      { region: 'elbow-inner', side: 'right', kind: 'joint', moment: 'after', value: 6, usual: false },
    ]);
  });

  test.each([
    [{ ...set(2, 'twelve') }, `value ${plainSetName(RUNG, 'left', 2)}`, /^must be a number/],
    [{ region: 'elbow-inner', painSide: 'right', painKind: 'joint' }, 'pain after', /pain score/],
    [{ 'pain after': '4' }, 'region', /must be one of/],
    [{ kind: '' }, 'kind', /must be one of/],
    [{ date: '2026-02-30' }, 'date', /must be a date that exists/],
    [{ effort: '11' }, 'effort', /0 rest to 10/],
  ])('refuses %o and names the field', (fields, path, message) => {
    const found = refused(fields as Record<string, string>);
    expect(found?.map(([where]) => where)).toContain(path);
    expect(found?.find(([where]) => where === path)?.[1]).toMatch(message);
  });

  test('names what was refused later as the form does', () => {
    const { sets } = plainCheckInSchema.parse({ ...START, ...set(1, '5'), ...set(3, '6') });
    const why = 'must be a whole number';
    expect(plainFields({ 'sets.1.value': why, session: 'is kept already' }, { sets })).toEqual({
      [`value ${plainSetName(RUNG, 'left', 3)}`]: why,
      session: 'is kept already',
    });
  });
});
