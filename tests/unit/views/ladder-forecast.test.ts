import { expect, test } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { ClientHistory, HistoryPlacement } from '#lib/domain/history.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { clientAxis } from '#lib/views/client-axis.ts';
import { ladderPanels } from '#lib/views/client-ladders.ts';
import { aHistory, aPlan, aRung, day, evening } from '#tests/fixtures/history-builders.ts';

const ladder = (ladderId: string, skill: string) =>
  [1, 2, 3].map((position) =>
    aRung({
      id: `${ladderId}-${position}`,
      ladderId,
      ladder: ladderId,
      skill,
      position,
      name: `${ladderId} ${position}`,
    }),
  );
const RUNGS = [...ladder('pull', 'Pull-up'), ...ladder('hold', 'Handstand')];
const on = (rungId: string, days: number, side: HistoryPlacement['side'] = 'both'): HistoryPlacement => ({
  ladderId: rungId.split('-')[0] ?? '',
  rungId,
  side,
  from: day(days),
});

function panelsOf(
  placements: HistoryPlacement[],
  skillsInFocus: string[],
  standing: Standing = 'in-training',
  days = 60,
) {
  const history: ClientHistory = aHistory({
    rungs: RUNGS.filter((rung) => rung.position < 3),
    placements,
    plans: [aPlan({ skillsInFocus })],
    client: { standing },
  });
  const view = buildView(history, evening(days));
  const allRungs = RUNGS.map((rung) => ({ ...rung, passSets: rung.pass.sets, passTarget: rung.pass.target }));
  return ladderPanels(view, clientAxis(view), { allRungs, limits: DEFAULT_LIMITS }).panels;
}
const sentencesOf = (placements: HistoryPlacement[], skillsInFocus: string[]) =>
  panelsOf(placements, skillsInFocus).map((panel) => panel.forecasts.map((one) => one.sentence));

test('the goal is the last rung of the ladder, also where the history does not carry it', () => {
  const [said] = sentencesOf([on('pull-1', 0), on('pull-2', 40)], []);
  expect(said).toEqual([
    expect.stringMatching(/^Last rung, pull 3: probably between .*; only 1 rung passed here\.$/),
  ]);
});

test('ladders of a skill in focus have a goal; all of them where no skill of theirs is in focus', () => {
  const both = [on('pull-1', 0), on('hold-1', 0)];
  const named = (skills: string[]) =>
    panelsOf(both, skills)
      .filter((panel) => panel.forecasts.length > 0)
      .map((panel) => panel.id)
      .sort();
  expect(named(['Handstand'])).toEqual(['hold']);
  expect(named(['Planche'])).toEqual(['hold', 'pull']);
});

test('sides that stand apart are said apart, each with its working', () => {
  const [panel] = panelsOf([on('pull-1', 0), on('pull-2', 30, 'left')], []);
  expect(panel?.forecasts.map((one) => one.sentence.split(':')[0])).toEqual([
    'Left, last rung, pull 3',
    'Right, last rung, pull 3',
  ]);
  expect(panel?.forecasts[0]?.working).toContain('On this rung for: 30 days, usually 28');
});

test('nothing is said of a client who left', () => {
  expect(panelsOf([on('pull-1', 0)], [], 'left')[0]?.forecasts).toEqual([]);
});

test('in the first four weeks it is too early to say', () => {
  const after = (days: number) => panelsOf([on('pull-1', 0)], [], 'in-training', days)[0]?.forecasts[0];
  expect(after(26)).toMatchObject({
    sentence: 'Last rung, pull 3: too early to say, 27 of 28 days here.',
    working: [],
    drawn: undefined,
  });
  expect(after(27)?.sentence).toMatch(/^Last rung, pull 3: probably/);
  expect(after(27)?.drawn?.steps.map(({ name }) => name)).toEqual(['pull 1', 'pull 2', 'pull 3']);
});
