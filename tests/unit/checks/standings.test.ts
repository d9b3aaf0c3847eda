import { describe, expect, it } from 'vitest';
import { standingsOf } from '#lib/checks/standings.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryPlacement } from '#lib/domain/history.ts';
import { aHistory, aRung, day, evening } from '#tests/fixtures/history-builders.ts';

const RUNGS = [1, 2, 3].map((position) => aRung({ id: `pull-${position}`, position }));
const on = (rung: number, days: number, side: HistoryPlacement['side'] = 'both'): HistoryPlacement => ({
  ladderId: 'pull',
  side,
  rungId: `pull-${rung}`,
  from: day(days),
});
const stands = (placements: HistoryPlacement[], days = 60, joinedAt = `${day(0)}T07:00:00.000Z`) =>
  standingsOf(buildView(aHistory({ rungs: RUNGS, placements, client: { joinedAt } }), evening(days))).map(
    ({ key, rung, side, from }) => `${key} ${rung.id} ${side} since ${from}`,
  );

describe('where a client stands', () => {
  it('is one for both sides on one rung, since the later of the two', () => {
    const since20 = [`pull pull-2 both since ${day(20)}`];
    expect(stands([on(2, 10, 'left'), on(2, 20, 'right')])).toEqual(since20);
    expect(stands([on(2, 20, 'left'), on(2, 10, 'right')])).toEqual(since20);
  });
  it('is one for each side on two rungs, and the only one where a side stands nowhere', () => {
    expect(stands([on(1, 0), on(2, 20, 'left')])).toEqual([
      `pull:left pull-2 left since ${day(20)}`,
      `pull:right pull-1 right since ${day(0)}`,
    ]);
    expect(stands([on(2, 20, 'right')])).toEqual([`pull:right pull-2 right since ${day(20)}`]);
  });
  it('goes by the newest placement, from its own day on', () => {
    const moves = [on(3, 30), on(1, 0), on(2, 20)];
    expect(stands(moves, 30)).toEqual([`pull pull-3 both since ${day(30)}`]);
    expect(stands(moves, 29)).toEqual([`pull pull-2 both since ${day(20)}`]);
  });
  it('began with the first of placements on the same rung in a row', () => {
    expect(stands([on(2, 0), on(1, 10), on(2, 20), on(2, 30)])).toEqual([
      `pull pull-2 both since ${day(20)}`,
    ]);
    expect(stands([on(2, 20), on(2, 30)])).toEqual([`pull pull-2 both since ${day(20)}`]);
  });
  it('takes of two placements on one day the one for the single side, then the higher name', () => {
    for (const order of [
      (list: HistoryPlacement[]) => list,
      (list: HistoryPlacement[]) => list.toReversed(),
    ]) {
      expect(stands(order([on(3, 20), on(1, 20, 'left')]))).toEqual([
        `pull:left pull-1 left since ${day(20)}`,
        `pull:right pull-3 right since ${day(20)}`,
      ]);
      expect(stands(order([on(3, 20), on(1, 20)]))).toEqual([`pull pull-3 both since ${day(20)}`]);
    }
  });
  it('begins when the client joined, not before', () => {
    expect(stands([on(2, 0)], 60, `${day(5)}T07:00:00.000Z`)).toEqual([`pull pull-2 both since ${day(5)}`]);
    expect(stands([on(2, 7)], 60, `${day(5)}T07:00:00.000Z`)).toEqual([`pull pull-2 both since ${day(7)}`]);
  });
});
