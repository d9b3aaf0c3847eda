import { expect, it } from 'vitest';
import { auditWords, auditWordsForClient } from '#lib/views/rights/audit-words.ts';
import { keptLines } from '#lib/views/rights/own-data.ts';

const NOTHING = {
  checkIns: 0,
  firstDate: null,
  lastDate: null,
  painScores: 0,
  questions: 0,
  coachWords: 0,
  pictures: 0,
  films: 0,
  plans: 0,
  reasons: 0,
  notes: 0,
  limits: 0,
};

it('names only kinds of which something is kept, and the notes that are not in the record', () => {
  expect(keptLines(NOTHING)).toHaveLength(2);
  const lines = keptLines({
    ...NOTHING,
    checkIns: 1240,
    firstDate: '2026-03-02',
    lastDate: '2026-11-24',
    notes: 1,
  });
  expect(lines[0]).toBe(
    '1,240 check-ins, from Monday 2 March 2026 to Tuesday 24 November 2026, corrected and deleted ones too',
  );
  expect(lines[1]).toBe(
    '1 note that coaches wrote for themselves: ask for them, they are not in the record below',
  );
});

it('says an act in words that follow a name, once about whom', () => {
  const line = {
    action: 'record-read',
    by: 'Tove',
    objectId: null,
    fields: ['plan'],
    client: 'Anahit',
    clientId: 'a1b2c3d4-0000',
    member: null,
  };
  expect(auditWords(line)).toBe('looked at the plan of Anahit');
  expect(auditWordsForClient(line)).toBe('looked at your plan');
  expect(auditWords({ ...line, client: null })).toBe(
    'looked at the plan of a client who was deleted (a1b2c3d4)',
  );
  const own = { ...line, action: 'consent-withdrawn', by: 'Anahit', objectId: 'share-with-next-coach' };
  expect(auditWords(own)).toBe('took back that the record may be handed on');
  expect(auditWords({ ...line, action: 'something-new' })).toBe('something new: Anahit');
});
