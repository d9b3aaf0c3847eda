import { expect, it } from 'vitest';
import { filmWaiting } from '#lib/checks/rules/film-waiting.ts';
import { standingsOf } from '#lib/checks/standings.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import { judge, theFinding } from '#tests/fixtures/check-client.ts';
import { aHistory, day, evening } from '#tests/fixtures/history-builders.ts';

// Late in the evening in UTC it is the next morning in Auckland.
const client = { zone: 'Pacific/Auckland' };
const late = (days: number) => `${day(days)}T21:30:00.000Z`;

it('dates a film by the client’s own calendar', () => {
  const films = [{ id: 'film-1', askedAt: late(1), receivedAt: late(3), lookedAt: null, words: '' }];
  expect(theFinding(judge(filmWaiting, aHistory({ films, client }), 10)).since).toBe(day(4));
});

it('lets nobody stand on a rung before the day of joining, by the client’s own calendar', () => {
  const history = aHistory({ client: { ...client, joinedAt: late(3) } });
  const view = buildView(history, evening(10), DEFAULT_LIMITS);
  expect(standingsOf(view).map(({ from }) => from)).toEqual([day(4)]);
});
