import { beforeEach, describe, expect, it } from 'vitest';
import { insertCheckInWord } from '#lib/db/check-in-words.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { checkLog, lookAtLog, takeLog, undoLog } from '#lib/usecases/import/log/import-log.ts';
import { loadLogs } from '#lib/usecases/import/log/load-logs.ts';
import type { LogMapping } from '#lib/usecases/import/log/shape-log.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { aPhone, aTraining, type Phone } from '../check-in/arrange.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';
import { leadOf } from './support.ts';

const NOW = new Date('2026-11-24T19:00:00.000Z');
const LATER = (hours: number) => new Date(NOW.getTime() + hours * 3_600_000);
const TEXT =
  'Date;Exercise;Reps;RPE;Min;Note\n2024-05-01;heel pulls;20/18;6;50;=SUM(A1)\n' +
  '2024-05-03;heel pulls;3x12;7;60;\n2026-11-24;heel pulls;15;;;\n2024-05-03;bench;5;7;60;\n';
let phone: Phone;
let mapping: LogMapping;
const asked = (over: Partial<{ text: string; mapping: LogMapping }> = {}) => ({
  clientId: phone.clientId,
  text: TEXT,
  mapping,
  ...over,
});
const lead = () => leadOf(phone.team);
const count = async (table: string) =>
  Number(
    (
      await ownerQuery<{ n: string }>(`select count(*) as n from ${table} where client_id = $1`, [
        phone.clientId,
      ])
    )[0]?.n,
  );

beforeEach(async () => {
  phone = await aPhone('Ada');
  mapping = {
    columns: ['date', 'drill', 'value', 'effort', 'minutes', 'words'],
    dateOrder: 'year-first',
    drills: [
      { word: 'heel pulls', rungId: phone.rungs.get('H3.4') ?? '' },
      { word: 'bench', rungId: null },
    ],
    pain: null,
  };
});

describe('an old log of a client', () => {
  it('is looked at and looked through without writing', async () => {
    const looked = await lookAtLog(lead(), { clientId: phone.clientId, text: TEXT });
    expect(looked.columns.map(({ means }) => means)).toEqual(mapping.columns);
    expect(looked).toMatchObject({ dateOrders: ['year-first'], rows: 4, drills: [{ rows: 3 }, { rows: 1 }] });
    expect(looked.rungs.length).toBeGreaterThan(200);
    await submitCheckIn(phone.actor, aTraining(phone), NOW);
    const found = await checkLog(lead(), asked(), NOW);
    expect(found).toMatchObject({ there: ['2026-11-24'], sets: 5, faulty: 0 });
    expect(found.days.map(({ date, sets }) => `${date} ${sets}`)).toEqual(['2024-05-01 2', '2024-05-03 3']);
    expect(await count('check_in')).toBe(1);
  });

  it('comes in once, beside what is there, counts for the days it tells of, and goes again within a day', async () => {
    await submitCheckIn(phone.actor, aTraining(phone), NOW);
    const before = await ownerQuery('select date, facts from day_rollup where client_id = $1', [
      phone.clientId,
    ]);
    const done = await takeLog(lead(), asked(), NOW);
    expect(done).toMatchObject({ days: 2, there: 1 });
    expect(await takeLog(lead(), asked(), NOW)).toEqual({ importId: null, days: 0, there: 3 });
    expect(await count('check_in')).toBe(3);
    expect(await count('check_in_set')).toBe(7);
    const rows = await ownerQuery<{ date: string; load: number }>(
      'select date::text, session_load_au as load from day_rollup where client_id = $1 order by date',
      [phone.clientId],
    );
    expect(rows.map(({ date, load }) => `${date} ${load}`)).toEqual([
      '2024-05-01 300',
      '2024-05-03 420',
      '2026-11-24 420',
    ]);
    const words = await ownerQuery<{ words: string }>(
      'select words from check_in where client_id = $1 order by date',
      [phone.clientId],
    );
    expect(words.map((row) => row.words)).toEqual(['=SUM(A1)', 'bench 5', '']);

    await expect(
      undoLog(lead(), { clientId: phone.clientId, importId: done.importId ?? '' }, LATER(25)),
    ).rejects.toMatchObject({ code: 'conflict' });
    const undone = await undoLog(
      lead(),
      { clientId: phone.clientId, importId: done.importId ?? '' },
      LATER(23),
    );
    expect(undone).toEqual({ days: 2, stayed: 0 });
    expect(
      await ownerQuery('select date, facts from day_rollup where client_id = $1', [phone.clientId]),
    ).toEqual(before);
    expect(await count('check_in')).toBe(1);
    expect((await loadLogs(lead(), phone.clientId, LATER(23)))?.logs).toMatchObject([
      { days: 2, sets: 5, mayUndo: false },
    ]);
    expect(await takeLog(lead(), asked(), LATER(23))).toMatchObject({ days: 2 });
  });

  it('keeps, when it is taken back, what a coach has spoken of since', async () => {
    const { importId } = await takeLog(lead(), asked(), NOW);
    const [first] = await ownerQuery<{ id: string }>(
      'select id from check_in where client_id = $1 order by date',
      [phone.clientId],
    );
    await withTeamPg(phone.team.scope, (tx) =>
      insertCheckInWord(
        tx,
        { clientId: phone.clientId, checkInId: first?.id ?? '', setId: null, text: 'Good.' },
        { memberId: phone.team.memberId, at: NOW },
      ),
    );
    expect(await undoLog(lead(), { clientId: phone.clientId, importId: importId ?? '' }, NOW)).toEqual({
      days: 2,
      stayed: 1,
    });
  });

  it('comes in whole or not at all, and into nobody else’s client', async () => {
    const broken = asked({ text: `${TEXT}2024-02-30;heel pulls;9;;;\n2024-06-01;heel pulls;many;;;\n` });
    await expect(takeLog(lead(), broken, NOW)).rejects.toMatchObject({
      code: 'invalid',
      fields: { 'line 6': expect.stringContaining('no day'), 'line 7': expect.stringContaining('many') },
    });
    expect(await count('check_in')).toBe(0);
    await expect(
      takeLog(lead(), asked({ mapping: { ...mapping, columns: ['date', 'drill'] } }), NOW),
    ).rejects.toMatchObject({ code: 'invalid' });
    const other = await makeTestTeam('Other');
    await expect(takeLog(leadOf(other), asked(), NOW)).rejects.toMatchObject({ code: 'not-found' });
  });

  it('comes in once when it is sent twenty times at once', async () => {
    const done = await Promise.all(Array.from({ length: 20 }, () => takeLog(lead(), asked(), NOW)));
    expect(done.filter(({ days }) => days > 0)).toHaveLength(1);
    expect(await count('check_in')).toBe(3);
  });
});
