import { expect, it } from 'vitest';
import { rightsLines } from '#lib/views/rights/board-lines.ts';

it('says once a client what matters most: deletion before consent', () => {
  const at = new Date('2026-11-24T10:00:00Z');
  const due = new Date('2026-12-01T10:00:00Z');
  expect(
    rightsLines([
      { clientId: 'a', name: 'Anahit', withdrawnAt: at, deletedOn: null },
      { clientId: 'b', name: 'Ruth', withdrawnAt: at, deletedOn: due },
    ]),
  ).toEqual([
    {
      words: 'Anahit took their consent back on Tuesday 24 November: no checks, no check-ins',
      href: '/clients/a/rights',
    },
    { words: 'Ruth asked to be deleted: it is done on Tuesday 1 December', href: '/clients/b/rights' },
  ]);
});
