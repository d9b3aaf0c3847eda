import { expect, it } from 'vitest';
import { jsonAnswer } from '#lib/edge/json-answer.ts';

it('says the length of a short answer in bytes, so that nothing packs it', async () => {
  const answer = jsonAnswer({ words: 'Anton übt' }, 201);
  expect(answer.status).toBe(201);
  expect(answer.headers.get('content-type')).toBe('application/json');
  expect(answer.headers.get('content-length')).toBe('22');
  expect(await answer.json()).toEqual({ words: 'Anton übt' });
});

it('leaves a long one to be packed', async () => {
  const answer = jsonAnswer('x'.repeat(1_022));
  expect(answer.headers.has('content-length')).toBe(false);
  expect(await answer.json()).toHaveLength(1_022);
});
