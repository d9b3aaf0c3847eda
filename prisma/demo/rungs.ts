import type { HistoryRung } from '#lib/domain/history.ts';
import { libraryHistoryRung } from '#lib/library/history-rung.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';

const byKey = new Map<string, HistoryRung>();
for (const ladder of STARTER_LIBRARY.ladders) {
  for (const rung of ladder.rungs) byKey.set(rung.key, libraryHistoryRung(ladder, rung));
}

/** A rung of the starter library in the form of a history; its id is its key until it is written to a team. */
export function demoRung(key: string): HistoryRung {
  const rung = byKey.get(key);
  if (!rung) throw new Error(`no rung ${key} in the starter library`);
  return rung;
}

/** The rung after this one on its ladder, or undefined at the top. */
export function rungAfter(key: string): HistoryRung | undefined {
  const { ladderId, position } = demoRung(key);
  return byKey.get(`${ladderId}.${position + 1}`);
}
