import { expect, it } from 'vitest';
import { coachesCarried, isAway } from '#lib/views/morning/carried-clients.ts';

const COACHES = ['ana', 'bo', 'cy', 'gone'];
const team = (covers: [string, string][]) => ({
  here: new Set(['ana', 'bo', 'cy']),
  leads: new Set(['ana']),
  covers: covers.map(([memberId, coveredById]) => ({ memberId, coveredById, to: '2026-11-30' })),
});
const carried = (covers: [string, string][]) =>
  Object.fromEntries(['ana', 'bo', 'cy'].map((id) => [id, coachesCarried(id, COACHES, team(covers))]));

it('carries one’s own; a lead’s mail also the clients of coaches who left', () => {
  expect(carried([])).toEqual({ ana: ['ana', 'gone'], bo: ['bo'], cy: ['cy'] });
});

it('goes to the cover, who carries both; the one who is away has none', () => {
  expect(carried([['bo', 'cy']])).toEqual({ ana: ['ana', 'gone'], bo: [], cy: ['bo', 'cy'] });
  expect(isAway('bo', team([['bo', 'cy']]))).toBe(true);
  expect(isAway('cy', team([['bo', 'cy']]))).toBe(false);
});

it('follows a cover who is covered in turn', () => {
  const covers: [string, string][] = [
    ['bo', 'cy'],
    ['cy', 'ana'],
  ];
  expect(carried(covers)).toEqual({ ana: ['ana', 'bo', 'cy', 'gone'], bo: [], cy: [] });
});

it('a cover who has left counts as none, and one may cover for somebody who left', () => {
  expect(carried([['bo', 'gone']]).bo).toEqual(['bo']);
  expect(isAway('bo', team([['bo', 'gone']]))).toBe(false);
  expect(carried([['gone', 'bo']])).toEqual({ ana: ['ana'], bo: ['bo', 'gone'], cy: ['cy'] });
});

it('two who cover each other lose nobody', () => {
  const covers: [string, string][] = [
    ['bo', 'cy'],
    ['cy', 'bo'],
  ];
  const { ana, bo, cy } = carried(covers);
  expect([...(ana ?? []), ...(bo ?? []), ...(cy ?? [])].sort()).toEqual(['ana', 'bo', 'cy', 'gone']);
});
