import { expect, test } from 'vitest';
import { byName, clientListRow } from '#lib/views/client-list.ts';

const row = (name: string, over: object = {}) => ({
  id: name,
  name,
  standing: 'in-training' as const,
  zone: 'Pacific/Auckland',
  lastDate: '2026-11-26',
  openReasons: 0,
  ...over,
});

test('names are found whatever their case or accents, those who left last', () => {
  const rows = [row('Zoë Ångström'), row('Ange', { standing: 'left' }), row('Bo')];
  expect(byName(rows, 'ang').map((one) => one.name)).toEqual(['Zoë Ångström', 'Ange']);
  expect(byName(rows, '').map((one) => one.name)).toEqual(['Bo', 'Zoë Ångström', 'Ange']);
});

test('today is the client’s today', () => {
  // 25 November 12:00 UTC is 26 November in Auckland.
  const now = new Date('2026-11-25T12:00:00.000Z');
  expect(clientListRow(row('Bo'), now)).toMatchObject({
    last: 'today',
    reasons: 'none',
    standing: 'in training',
  });
  expect(clientListRow(row('Bo', { lastDate: null, openReasons: 2 }), now)).toMatchObject({
    last: 'none yet',
    reasons: '2',
  });
});
