import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { aPain, aRestDay } from '#tests/fixtures/history-builders.ts';

/** The same history with the rows of every list in another order, those inside rows too. */
export function shuffled(history: ClientHistory, seed: number): ClientHistory {
  let state = seed + 1;
  // A plain generator of the Lehmer kind: fast, and good enough to put rows in another order.
  const next = (below: number) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
  const mixed = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null) return value;
    if (!Array.isArray(value)) {
      const copy: Record<string, unknown> = { ...value };
      for (const key in copy) if (typeof copy[key] === 'object') copy[key] = mixed(copy[key]);
      return copy;
    }
    const rows = value.map(mixed);
    for (let at = rows.length - 1; at > 0; at -= 1) {
      const other = next(at + 1);
      [rows[at], rows[other]] = [rows[other], rows[at]];
    }
    return rows;
  };
  return mixed(history) as ClientHistory;
}

/** The same history, read one to nine days later: with rows that are dated after the evening looked from. */
export function withLater(history: ClientHistory, today: string, seed: number): ClientHistory {
  const date = addDays(today, 1 + (seed % 9));
  const instant = `${addDays(date, 2)}T12:00:00.000Z`;
  const [trained] = history.checkIns.filter((each) => each.kind === 'training').slice(-1);
  const { ladderId, id: rungId } = history.rungs.find((rung) => rung.position === 2) ?? {
    ladderId: '',
    id: '',
  };
  const place = { region: 'elbow-inner', side: 'left' } as const;
  const pain = [aPain(9, place)];
  const sign = { sign: 'chest-pain', goneWithinMinute: false, region: null, side: null } as const;
  const later = { id: 'later', date, sentAt: instant, pain, nothingHurts: false, dangerSigns: [sign] };
  return {
    ...history,
    checkIns: [
      ...history.checkIns,
      trained ? { ...trained, ...later, ground: 'grass' } : { ...aRestDay(0), ...later },
    ],
    placements: [...history.placements, { ladderId, side: 'both', rungId, from: date }],
    absences: [...history.absences, { from: date, to: null, kind: 'illness' }],
    questions: [
      ...history.questions,
      { id: 'later', askedAt: instant, text: 'Numb?', answeredAt: null, answer: null },
    ],
    films: [
      ...(history.films ?? []),
      { id: 'later', askedAt: instant, receivedAt: instant, lookedAt: null, words: '' },
    ],
    steps: [
      ...history.steps,
      { kind: 'hold', takenOn: date, ladderId, side: 'both', reviewOn: null, words: '' },
    ],
    seen: [...history.seen, instant],
    clinicianWords: [...history.clinicianWords, { date, region: null, side: null, words: 'Fine.' }],
  };
}
