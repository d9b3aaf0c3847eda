import { describe, expect, it } from 'vitest';
import { questionWaiting } from '#lib/checks/rules/question-waiting.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { ClientHistory, HistoryQuestion } from '#lib/domain/history.ts';
import { drillsAsked } from '#lib/views/replies/drills-asked.ts';
import { inAnsweringOrder, waitingReply } from '#lib/views/replies/waiting-reply.ts';
import { aHistory, aRung, day } from '#tests/fixtures/history-builders.ts';

// Day 10 of the built histories is Thursday 12 March 2026; Berlin is an hour ahead of UTC then.
const NOW = new Date(`${day(10)}T15:00:00.000Z`);
const OFFICE = { zone: 'Europe/Berlin', days: [1, 2, 3, 4, 5], from: '09:00', to: '18:00' };

function shown(text: string, askedAt: string, over: Partial<ClientHistory> = {}) {
  const question: HistoryQuestion = { id: 'q', text, askedAt, answeredAt: null, answer: null };
  const history = aHistory({ questions: [question], ...over });
  const view = buildView(history, { date: day(10), instant: NOW.toISOString() }, DEFAULT_LIMITS);
  const reply = waitingReply({
    question: { id: 'q', text, askedAt, stills: [] },
    view,
    limits: DEFAULT_LIMITS,
    reasons: [],
    ruledOut: history.limits,
    seen: [],
    earlier: [],
    zone: 'Europe/Berlin',
    now: NOW,
  });
  const [outcome] = questionWaiting.evaluate(view, { ...DEFAULT_LIMITS, 'questionWaiting.watchHours': 0 });
  return { reply, checked: outcome?.status === 'flagged' ? outcome.evidence.hours : undefined };
}

describe('hours waiting', () => {
  it.each([
    ['today', `${day(10)}T11:00:00.000Z`, '4 h in answering hours'],
    ['last evening', `${day(9)}T22:00:00.000Z`, '7 h in answering hours'],
    ['over a weekend', `${day(4)}T15:00:00.000Z`, '36 h in answering hours'],
    ['a minute ago', `${day(10)}T14:59:00.000Z`, 'under 1 h in answering hours'],
  ])('%s: what is said is what the check counts', (_, askedAt, said) => {
    const { reply, checked } = shown('Straps or no straps?', askedAt, { answering: OFFICE });
    expect(reply.waited).toBe(said);
    expect(reply.hours).toBe(checked);
  });

  it('beyond twice the hours that ask for an answer both stop counting, and the page says so', () => {
    const { reply, checked } = shown('Straps?', '2026-01-05T09:00:00.000Z', { answering: OFFICE });
    expect(reply.waited).toBe(`${checked} h or more in answering hours`);
    expect(reply.hours).toBe(checked);
  });

  it('danger words and a team without hours count round the clock', () => {
    const numb = shown('My hand went numb last night', `${day(9)}T22:00:00.000Z`, { answering: OFFICE });
    expect([numb.reply.waited, numb.reply.danger, numb.checked]).toEqual(['17 h, round the clock', true, 17]);
    const open = shown('Straps?', `${day(9)}T22:00:00.000Z`);
    expect([open.reply.waited, open.checked]).toEqual(['17 h, round the clock', 17]);
  });

  it('since when is told on the clock of the coach', () => {
    const { reply } = shown('Straps?', `${day(9)}T22:00:00.000Z`);
    expect(reply.since).toBe('Wed 23:00');
    expect(reply.sinceExact).toBe('Wednesday 11 March 2026, 23:00 your time');
  });
});

it('marks the words of danger signs where they stand', () => {
  const { reply } = shown('Numb hand, and I can’t see well. Go on?', `${day(10)}T11:00:00.000Z`);
  expect(reply.asked).toEqual([
    { at: 0, text: 'Numb', danger: true },
    { at: 4, text: ' hand, and I ', danger: false },
    { at: 17, text: 'can’t see', danger: true },
    { at: 26, text: ' well. Go on?', danger: false },
  ]);
});

it('says limits in force only, and that nobody has checked in yet', () => {
  const limit = { tissue: null, region: null, side: null, percent: null, who: 'the coach' };
  const { reply } = shown('Straps?', `${day(10)}T11:00:00.000Z`, {
    limits: [
      { ...limit, rule: 'no-overhead', from: day(2), until: day(20) },
      { ...limit, rule: 'no-floor', from: day(0), until: day(9) },
    ],
  });
  expect(reply.context.limits).toEqual(['Nothing overhead until Sun 22 Mar']);
  expect(reply.context.lastCheckIn).toBe('No check-in yet.');
});

it('danger words come first, then by the time of asking', () => {
  const at = (id: string, askedAt: string, danger = false) => ({ id, askedAt, danger });
  const order = inAnsweringOrder([
    at('new', '3'),
    at('old', '1'),
    at('danger', '2', true),
    at('also old', '1'),
  ]);
  expect(order.map(({ id }) => id)).toEqual(['danger', 'also old', 'old', 'new']);
});

describe('drills that a question speaks of', () => {
  const rungs = new Map(
    [
      aRung({ id: 'p', name: 'Tuck planche', ladder: 'Planche holds', position: 3 }),
      aRung({ id: 'h', name: 'Toe pull, both hands', ladder: 'Toe pulls', position: 2 }),
      aRung({ id: 'r', name: 'Ring row', ladder: 'Rows', position: 1 }),
      aRung({ id: 'd', name: 'Ring dip, turned out', ladder: 'Dips', position: 4 }),
    ].map((rung) => [rung.id, rung]),
  );
  const items = ['p', 'h', 'r', 'd'].map((rungId) => ({
    session: 'A',
    rungId,
    side: 'both' as const,
    sets: 4,
    target: 5,
    minutes: null,
    timesPerWeek: 2,
  }));
  it.each([
    ['My planches feel heavy', ['Tuck planche: 4 × 5, twice a week; rung 3 of Planche holds']],
    ['Hands on the floor or on the wall?', []],
    ['ROWS before toe pulls?', ['Toe pull, both hands', 'Ring row']],
    ['Rings turn out at the top of the dips', ['Ring dip, turned out']],
    ['How many pull-ups?', []],
    ['', []],
  ])('%s', (text, lines) => {
    const found = drillsAsked(text, items, rungs);
    expect(found).toHaveLength(lines.length);
    for (const line of lines) expect(found.some((one) => one.startsWith(line))).toBe(true);
  });
});
