import { describe, expect, it } from 'vitest';
import { failureInWords } from '#lib/views/night-failure.ts';
import { isGivenUp, mostNewRows, type NightRun, nightLines } from '#lib/views/nights.ts';
import { givenUpInWords, stuckInWords } from '#lib/views/stuck-outbox.ts';
import { unfinishedInWords } from '#lib/views/unfinished-nights.ts';

const TODAY = '2026-11-25';
const aRun = (over: Partial<NightRun> = {}): NightRun => ({
  localDate: '2026-11-24',
  startedAt: new Date('2026-11-25T02:00:00Z'),
  finishedAt: new Date('2026-11-25T02:12:10Z'),
  clientsDue: 120,
  clientsDone: 120,
  clientsFailed: 0,
  clientsLater: 0,
  rulesVersion: '3',
  settingsFrom: 0,
  settingsTo: 0,
  ...over,
});
const lines = (runs: NightRun[], over: Partial<Parameters<typeof nightLines>[0]> = {}) =>
  nightLines({
    runs,
    failed: [],
    newRows: [],
    leftOut: [],
    today: TODAY,
    zone: 'Europe/Berlin',
    caughtUpFrom: '2026-11-11',
    ...over,
  });
const first = (...of: Parameters<typeof lines>) => {
  const [line] = lines(...of);
  return line?.kind === 'run' ? line : expect.fail('no run');
};

describe('a run', () => {
  it('says when in the reader’s own time, how long, how many and by which numbers', () => {
    expect(first([aRun()])).toMatchObject({
      said: 'Tue',
      started: 'today 03:00',
      took: '12 minutes',
      checked: 'all 120',
      versions: 'rules 3, settings as delivered',
    });
  });

  it.each([
    [
      { finishedAt: null, clientsDone: 100 },
      { took: 'not finished', checked: '100 of 120' },
    ],
    [
      { finishedAt: null, clientsDone: 100, clientsLater: 19 },
      { took: 'not finished', checked: '100 of 120; 19 to come at 03:00 where they live' },
    ],
    [
      { finishedAt: null, clientsDone: 100, clientsFailed: 1, clientsLater: 19 },
      { took: 'goes on', checked: '100 of 120; 19 to come at 03:00 where they live' },
    ],
    [{ finishedAt: new Date('2026-11-25T02:00:41Z') }, { took: '41 seconds' }],
    [{ finishedAt: new Date('2026-11-25T05:00:00Z') }, { took: '3 hours' }],
    [{ clientsDone: 117 }, { checked: '117 of 120' }],
    [{ settingsFrom: 4, settingsTo: 4 }, { versions: 'rules 3, settings 4' }],
    [{ settingsFrom: 0, settingsTo: 4 }, { versions: 'rules 3, settings 0 to 4' }],
    [{ settingsFrom: null, settingsTo: null }, { versions: 'rules 3' }],
  ])('%j', (run, words) => {
    expect(first([aRun(run)])).toMatchObject(words);
  });

  it.each([
    [20, false],
    [21, true],
  ])('%i new rows for 120 clients: over the line %s', (clients, over) => {
    const { newRows } = first([aRun()], { newRows: [{ localDate: '2026-11-24', clients }] });
    expect(newRows).toEqual({ count: clients, most: 20, over });
  });

  it('draws the line by the number of clients, and not under five', () => {
    expect([mostNewRows(1_000), mostNewRows(60), mostNewRows(12), mostNewRows(0)]).toEqual([167, 10, 5, 5]);
  });
});

describe('what was left out', () => {
  const runs = [aRun({ localDate: '2026-11-09' }), aRun({ localDate: '2026-11-05' })];
  const span = { from: '2026-11-06', to: '2026-11-08', nights: 3, clients: 118 };

  it('stands where it belongs, with whose nights it was', () => {
    expect(lines(runs, { leftOut: [span] }).map((line) => line.kind)).toEqual(['run', 'gap', 'run']);
    expect(lines(runs, { leftOut: [span] })[1]).toMatchObject({
      words: expect.stringMatching(
        /^Fri 6 Nov to Sun 8 Nov: 3 nights of 118 clients were not run and are too long/,
      ),
    });
    expect(lines(runs)).toHaveLength(2);
  });

  it('is said of one night of one client too, and before any run', () => {
    const one = { from: '2026-11-06', to: '2026-11-06', nights: 1, clients: 1 };
    expect(lines([], { leftOut: [one] })[0]).toMatchObject({
      words: expect.stringMatching(/^Fri 6 Nov: 1 night of 1 client was not run and is too long/),
    });
  });

  it('a failure of a night that is too long ago is not promised another try', () => {
    const failed = { localDate: '2026-11-09', clientId: 'c', name: 'Ada', attempts: 2, failure: '' };
    expect(first([aRun({ localDate: '2026-11-09' })], { failed: [failed] }).failed[0]?.tries).toBe(
      'tried 2 times, too long ago to be tried again',
    );
    expect(
      first([aRun({ localDate: '2026-11-11' })], { failed: [{ ...failed, localDate: '2026-11-11' }] })
        .failed[0]?.tries,
    ).toBe('tried 2 times, tried again within 15 minutes');
  });
});

describe('failures', () => {
  it('say the check, what is kept and what happens next, with the place for who mends it', () => {
    const failed = [
      {
        localDate: '2026-11-24',
        clientId: 'a',
        name: 'Maren',
        attempts: 2,
        failure: 'TypeError at lib/checks/rules/too-hard.ts:33',
      },
    ];
    expect(first([aRun()], { failed }).failed).toEqual([
      {
        clientId: 'a',
        name: 'Maren',
        said: 'the check “rung too hard” stopped at something in this history',
        place: 'TypeError at lib/checks/rules/too-hard.ts:33',
        tries: 'tried 2 times, tried again within 15 minutes',
      },
    ]);
    expect(isGivenUp({ attempts: 4 })).toBe(false);
    expect(isGivenUp({ attempts: 5 })).toBe(true);
  });

  it.each([
    ['RangeError at lib/stats/median.ts:4', /^a check stopped/],
    ['ZodError at lib/schemas/history.ts:9', /stored in a form/],
    ['error at lib/db/reasons.ts:40', /^the database could not/],
    ['TypeError at lib/db/histories.ts:40', /could not be put together/],
    ['', /no words yet/],
  ])('%s', (failure, said) => {
    expect(failureInWords(failure).said).toMatch(said);
  });
});

describe('the outbox', () => {
  it('says what waits, since when, and what the last try said', () => {
    const oldest = new Date('2026-11-25T06:05:00Z');
    const at = { today: TODAY, zone: 'Europe/Berlin' };
    expect(
      stuckInWords(
        [
          { kind: 'mail', count: 3, oldest, attempts: 4, lastError: 'connection refused' },
          { kind: 'push', count: 1, oldest, attempts: 0, lastError: null },
        ],
        at,
      ),
    ).toEqual([
      {
        kind: 'mail',
        words:
          '3 mails have not left since today 07:05, tried 4 times; the last try said “connection refused”.',
      },
      { kind: 'push', words: '1 notice to a phone has not left since today 07:05, not tried yet.' },
    ]);
    expect(stuckInWords([], at)).toEqual([]);
  });

  it('says in words what stopped a check', () => {
    const lastError = 'TypeError at lib/checks/rules/too-hard.ts:33';
    const row = {
      kind: 'after-check-in',
      count: 2,
      oldest: new Date('2026-11-25T06:05:00Z'),
      attempts: 1,
      lastError,
    };
    const [said] = stuckInWords([row], { today: TODAY, zone: 'Europe/Berlin' });
    expect(said?.words).toMatch(
      /^2 check-ins have not been looked at by the checks since today 07:05, tried once; the last try said “the check “/,
    );
    expect(said?.words).not.toContain('TypeError');
  });

  it('says what is not tried any more, and why', () => {
    expect(givenUpInWords([{ kind: 'mail', count: 1, why: 'the mail server refused it (550)' }])).toEqual([
      '1 mail has not left in the last 7 days: the mail server refused it (550).',
    ]);
  });
});

describe('a night that was not finished at 06:00', () => {
  it('is said with its date and how many clients', () => {
    expect(
      unfinishedInWords(
        [
          { localDate: '2026-11-23', clients: 1 },
          { localDate: '2026-11-24', clients: 12 },
        ],
        TODAY,
      ),
    ).toBe('the night of Mon for 1 client and the night of Tue for 12 clients');
    expect(unfinishedInWords([{ localDate: '2026-11-24', clients: 12 }], TODAY)).toBe(
      'the night of Tue for 12 clients',
    );
    const many = ['20', '21', '22', '23', '24'].map((day) => ({ localDate: `2026-11-${day}`, clients: 3 }));
    expect(unfinishedInWords(many, TODAY)).toBe('5 nights, the oldest the night of Fri for 3 clients');
    expect(unfinishedInWords([], TODAY)).toBe('');
  });
});
