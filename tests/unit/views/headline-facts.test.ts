import { expect, test } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import { loadView } from '#lib/views/client-load.ts';
import { laddersInSentences, nowInPhrases } from '#lib/views/headline-facts.ts';
import {
  aCheckIn,
  aHistory,
  aPain,
  aPlan,
  aRestDay,
  aRung,
  day,
  sets,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';

const at = (days: number) => ({ date: day(days), instant: `${day(days)}T22:00:00.000Z` });
const trained = threeAWeek(12);
const rests = Array.from({ length: 84 }, (_, days) => aRestDay(days)).filter(
  (rest) => !trained.some((each) => each.date === rest.date),
);
const phrases = (checkIns: ReturnType<typeof threeAWeek>) => {
  const view = buildView(aHistory({ checkIns }), at(83), DEFAULT_LIMITS);
  return nowInPhrases(view, loadView(view, [], DEFAULT_LIMITS).panels[0]);
};

test('load against the usual week, and that no joint hurt', () => {
  expect(phrases([...trained, ...rests])).toEqual([
    'the week is **1.0 ×** usual',
    'no joint hurt in 28 days',
  ]);
});

test('the worst pain with its place; unknown days make the week at least so much', () => {
  const sore = trained.map((each) =>
    each.date === day(63) ? { ...each, nothingHurts: false, pain: [aPain(3)] } : each,
  );
  expect(phrases([...sore, ...rests.filter((rest) => rest.date < day(81))])).toEqual([
    'the week is at least **1.0 ×** usual',
    'the worst pain of 28 days 3 of 10 (right elbow, inner)',
  ]);
});

test('nothing is said of what nobody told', () => {
  const mute = trained.slice(0, 6).map((each) => ({ ...each, nothingHurts: false }));
  expect(phrases(mute)).toEqual([]);
});

test('the ladder of the goal comes first, mobility last, with the share of the pass mark', () => {
  const split = aRung({
    id: 'split-1',
    ladderId: 'split',
    ladder: 'Split',
    name: 'Split',
    family: 'mobility',
    skill: 'Split',
  });
  const history = aHistory({
    rungs: [split, aRung()],
    plans: [aPlan()],
    placements: [
      { ladderId: 'split', side: 'both', rungId: 'split-1', from: day(60) },
      { ladderId: 'pull', side: 'both', rungId: 'pull-1', from: day(7) },
    ],
    checkIns: [aCheckIn(80, { sets: sets([5, 5, 2]) })],
  });
  expect(laddersInSentences(buildView(history, at(83), DEFAULT_LIMITS), DEFAULT_LIMITS)).toEqual([
    'On Pull-up, 3 × 5, since 9 Mar, **80 %** of the pass mark on 21 May.',
    'On Split, 3 × 5, since 1 May.',
  ]);
});
