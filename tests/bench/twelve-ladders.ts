import type { ClientHistory } from '#lib/domain/history.ts';

/** Sessions trained in turns, each with ladders of its own. */
const SESSIONS = ['A', 'B', 'C'];

/**
 * The same days and sets on three times as many ladders: each ladder is there once for each of three sessions, which
 * are trained in turns. What the checks go through stays as much, the ladders to judge are three times as many. A set
 * is planned as it was done: else the plans of the generator, which ask the pass mark from the first day, would make
 * a finding of nearly every ladder.
 */
export function trainedInTurns(history: ClientHistory): ClientHistory {
  const everyTurn = <Item extends object>(
    items: readonly Item[],
    named: (item: Item, turn: string) => Item,
  ) => SESSIONS.flatMap((turn) => items.map((item) => named(item, turn)));
  const withRung = <Item extends { rungId: string }>(item: Item, turn: string): Item => ({
    ...item,
    rungId: `${item.rungId} ${turn}`,
  });
  const withLadder = <Item extends { ladderId: string }>(item: Item, turn: string): Item => ({
    ...item,
    ladderId: `${item.ladderId} ${turn}`,
  });
  return {
    ...history,
    rungs: everyTurn(history.rungs, (rung, turn) => withLadder({ ...rung, id: `${rung.id} ${turn}` }, turn)),
    placements: everyTurn(history.placements, (one, turn) => withLadder(withRung(one, turn), turn)),
    plans: history.plans.map((plan) => ({
      ...plan,
      items: everyTurn(plan.items, (item, turn) => ({ ...withRung(item, turn), session: turn })),
    })),
    checkIns: history.checkIns.map((checkIn, index) => {
      const turn = SESSIONS[index % SESSIONS.length] ?? '';
      const sets = checkIn.sets.map((set) => withRung({ ...set, planned: set.value }, turn));
      return { ...checkIn, session: turn, sets };
    }),
  };
}
