import type { HistoryPlanItem, HistoryRung } from '#lib/domain/history.ts';
import { planItemInWords } from '../plan-words.ts';

/** Words that stand in many names of rungs and in many questions: they name no drill. Own list. */
const COMMON = new Set(
  'the and one two off out top for low arm arms leg legs set sets day per bar bars with from free hold holds high back side hand hands floor wall rings both left right slow full short long line body weight step steps'.split(
    ' ',
  ),
);
const SHORTEST = 3;
const SHOWN = 3;

/**
 * The lines of the plan that a question speaks of: those whose rung or ladder shares a word with it, the most words
 * first, at most three. Words of fewer than three letters and those that stand in most names do not count; "planches"
 * and "planche" are one, "pull-up" and "pull" are two. Empty when it names none: then nothing is guessed.
 */
export function drillsAsked(
  text: string,
  items: readonly HistoryPlanItem[],
  rungs: ReadonlyMap<string, HistoryRung>,
): string[] {
  const asked = new Set(wordsOf(text));
  const shared = items.map((item, at) => {
    const rung = rungs.get(item.rungId);
    const names = new Set(rung ? wordsOf(`${rung.name} ${rung.ladder}`) : []);
    return { item, at, rung, count: [...names].filter((name) => asked.has(name)).length };
  });
  return shared
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count || a.at - b.at)
    .slice(0, SHOWN)
    .map(({ item, rung }) => lineOf(item, rung));
}

function wordsOf(text: string): string[] {
  const words =
    text
      .normalize('NFC')
      .toLowerCase()
      .match(/\p{L}+(?:-\p{L}+)*/gu) ?? [];
  return words.filter((word) => word.length >= SHORTEST && !COMMON.has(word)).map(stemOf);
}

/** Good enough for names of drills: "pulls" and "pull", "planches" and "planche". */
function stemOf(word: string): string {
  return word.length > SHORTEST && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
}

function lineOf(item: HistoryPlanItem, rung: HistoryRung | undefined): string {
  const line = planItemInWords({ ...item, stopRule: undefined }, rung);
  return rung ? `${line}; rung ${rung.position} of ${rung.ladder}` : line;
}
