import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import { clientAxis, PAGE_DAYS } from '#lib/views/client-axis.ts';
import { clientPage } from '#lib/views/client-page.ts';
import { windowPanels } from '#lib/views/client-window.ts';
import { aCheckIn, aHistory, aPain, aRung, aSet, day, sets } from '#tests/fixtures/history-builders.ts';

const LAST = 83;
const at = (date: string) => ({ date, instant: `${date}T22:00:00.000Z` });
const heel = aRung({
  id: 'heel',
  ladderId: 'heel',
  ladder: 'Heel pull',
  part: 'Over-balance',
  measure: 'hold',
  name: 'Heel pull, short',
});
const toe = aRung({
  id: 'toe',
  ladderId: 'toe',
  ladder: 'Toe pull',
  part: 'Under-balance',
  measure: 'hold',
  name: 'Toe pull, short',
});
const arm = aRung({
  id: 'arm',
  ladderId: 'arm',
  ladder: 'One arm',
  name: 'One arm',
  measure: 'hold',
  eachSide: true,
});

const holds = (heels: number, toes: number) => [
  aSet({ rungId: 'heel', value: heels }),
  aSet({ rungId: 'heel', index: 1, value: heels - 2 }),
  aSet({ rungId: 'toe', value: toes }),
];

/** Every fourth day; on day 40 sore, and both sides of one arm. */
const history = aHistory({
  rungs: [aRung(), heel, toe, arm],
  checkIns: Array.from({ length: 21 }, (_, index) => index * 4).map((days) =>
    aCheckIn(days, {
      sets: [
        ...sets([5, 5, 5]),
        ...holds(18, 10),
        ...(days === 40
          ? [
              aSet({ rungId: 'arm', side: 'left', value: 6 }),
              aSet({ rungId: 'arm', side: 'right', value: 8 }),
            ]
          : []),
      ],
      ...(days === 40 && { nothingHurts: false, pain: [aPain(4), aPain(2, { moment: 'morning' })] }),
    }),
  ),
});
const view = buildView(history, at(day(LAST)), DEFAULT_LIMITS);
const page = clientPage({
  view,
  limits: DEFAULT_LIMITS,
  reasons: [],
  ladderRungs: [],
  seen: [],
  goal: '',
  now: new Date(`${day(LAST + 1)}T08:00:00.000Z`),
});

describe('the reading line', () => {
  it('has a text of every chart for each of the 84 days, and for every chart that is drawn', () => {
    const { days, byPanel } = page.readings;
    expect(days).toHaveLength(PAGE_DAYS);
    for (const texts of Object.values(byPanel)) expect(texts).toHaveLength(PAGE_DAYS);
    const drawn = [
      ...page.ladders.panels.map((panel) => panel.id),
      ...page.load.panels.map((panel) => panel.key),
      'pain',
      ...page.pairs.map((panel) => panel.rungId),
      ...page.windows.map((panel) => panel.key),
    ];
    expect(Object.keys(byPanel).sort()).toEqual(drawn.sort());
  });
  it('prints that day: its state, load, pain, sides and edges', () => {
    const { days, byPanel } = page.readings;
    expect(days[40]).toBe('Sat 11 Apr, trained');
    expect(byPanel.session?.[40]).toBe('300 AU; 7 days 600');
    expect(byPanel.pain?.[40]).toBe('right elbow, inner 4, morning 2');
    expect(byPanel.arm?.[40]).toBe('left 6, right 8 s');
    expect(byPanel['window:short']?.[40]).toBe('heel pull 18 s, toe pull 10 s');
    expect(byPanel.pull?.[40]).toContain('3 x 5');
  });
  it('says unknown, not zero, and nothing of what was not asked', () => {
    const { days, byPanel } = page.readings;
    expect(days[LAST]).toBe('Sun 24 May, unknown');
    expect(byPanel.session?.[LAST]).toBe('unknown');
    expect(byPanel.session?.[41]).toBe('0 AU; 7 days 600');
    expect(byPanel.arm?.[41]).toBe('');
    expect(byPanel.pain?.[LAST]).toBe('');
  });
});

describe('the balance window', () => {
  it('shows the best clean hold of a day on each edge, and the medians the check reads', () => {
    const [panel] = page.windows;
    expect(panel).toMatchObject({ key: 'window:short', title: 'Heel and toe pulls, short', top: 20 });
    expect(panel?.heel.map((point) => point.seconds)).toEqual(Array(21).fill(18));
    expect(panel?.lines.map((line) => line.text)).toEqual([
      'heel pulls 18 s, median of 10 days',
      'toe pulls 10 s, median of 10 days',
      '44 % apart, uneven over 33 %',
    ]);
  });
  it('says how many days are too few, and is left out without any hold', () => {
    const few = { ...history, checkIns: history.checkIns.slice(-3) };
    const [panel] = windowPanels(buildView(few, at(day(LAST))), clientAxis(view), DEFAULT_LIMITS);
    expect(panel?.lines.at(-1)?.text).toBe('3 and 3 of 5 days with each: too few to compare');
    const none = { ...history, checkIns: [] };
    expect(windowPanels(buildView(none, at(day(LAST))), clientAxis(view), DEFAULT_LIMITS)).toEqual([]);
  });
});

it('says of all loads together what lies above its usual week', () => {
  expect(page.load.summary).toBe('Nothing lies over its usual week in the last 7 days.');
});

it('says how often the client moved', () => {
  expect(page.ladders.summary).toBe(
    'On 1 ladder; in these 84 days 0 steps up and 0 back, each side counted.',
  );
});

it('says every other figure of a load, or why there is no number', () => {
  expect(page.load.panels[0]?.figures).toEqual([
    'against the mean of the 3 weeks before: no number, 25 of 28 days known',
    'mean day weighted to the last 7 days 110 AU, to the last 28 84 AU',
    'change from the week before: no number, a day of the two weeks is unknown or that week was empty',
    'monotony and strain: no number, 4 of 7 days known',
  ]);
  const whole = buildView(history, at(day(80)), DEFAULT_LIMITS);
  const now = new Date(`${day(81)}T08:00:00.000Z`);
  const then = clientPage({
    view: whole,
    limits: DEFAULT_LIMITS,
    reasons: [],
    ladderRungs: [],
    seen: [],
    goal: '',
    now,
  });
  expect(then.load.panels[0]?.figures[0]).toBe('against the mean of the 3 weeks before: 1.2 ×');
  expect(then.load.panels[0]?.figures[3]).toMatch(/^monotony \d\.?\d?, strain \d+ \(7 days\)$/);
});

it('draws the tissues first that a reason names in its evidence', () => {
  const reason = {
    id: 'r',
    kind: 'load-jump' as const,
    level: 'watch' as const,
    points: 1,
    tier: 'this-week' as const,
    state: 'open',
    sentence: 'More.',
    short: 'more',
    since: day(80),
    raisedAt: `${day(80)}T03:00:00.000Z`,
    asideUntil: null,
    withClientUntil: null,
    step: { text: 'Less' },
    subject: { key: 'load', label: '' },
    evidence: { tissues: 'upper-back:both' },
  };
  const now = new Date(`${day(LAST + 1)}T08:00:00.000Z`);
  const named = clientPage({
    view,
    limits: DEFAULT_LIMITS,
    reasons: [reason],
    ladderRungs: [],
    seen: [],
    goal: '',
    now,
  });
  expect(named.load.panels[1]?.title).toMatch(/upper back/i);
  expect(page.load.panels[1]?.title).not.toMatch(/upper back/i);
});
