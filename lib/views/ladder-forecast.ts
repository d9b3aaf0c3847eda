import { forecast } from '#lib/checks/forecast.ts';
import type { TimedRung } from '#lib/checks/passed-rungs.ts';
import { standingsOf } from '#lib/checks/standings.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import type { Working } from '#lib/domain/finding.ts';
import { asSentence } from '#lib/domain/labels.ts';

export type LadderForecast = {
  key: string;
  /** One sentence, for the coach. */
  sentence: string;
  /** What it was computed from, line by line. */
  working: string[];
};

/** When the last rung of a ladder will be passed, on each side that stands apart. Empty where nothing can be said, and of clients who left. */
export function ladderForecasts(
  view: ClientView,
  ladderId: string,
  rungs: readonly (TimedRung & { name: string; ladderId: string })[],
  limits: Limits,
): LadderForecast[] {
  if (view.history.client.standing === 'left') return [];
  const own = rungs.filter((rung) => rung.ladderId === ladderId);
  return standingsOf(view)
    .filter((standing) => standing.rung.ladderId === ladderId)
    .flatMap((standing) => {
      const found = forecast(view, standing, own, limits);
      if (!found) return [];
      const { sentence } = found;
      const sided = `${asSentence(standing.side)}, ${sentence.slice(0, 1).toLowerCase()}${sentence.slice(1)}`;
      return [
        {
          key: standing.key,
          sentence: standing.side === 'both' ? sentence : sided,
          working: linesOf(found.working),
        },
      ];
    });
}

/** Ladders whose end is a goal: those of a skill in focus; all where the plan in force names none of theirs. */
export function isGoalLadder(view: ClientView): (ladderId: string) => boolean {
  const focus = view.planOn(view.asOf.date)?.skillsInFocus ?? [];
  const goals = new Set(
    standingsOf(view).flatMap(({ rung }) => (focus.includes(rung.skill) ? [rung.ladderId] : [])),
  );
  return (ladderId) => goals.size === 0 || goals.has(ladderId);
}

function linesOf({ inputs, thresholds, formula, doubt }: Working): string[] {
  return [
    ...inputs.map(({ name, value, unit }) => `${asSentence(name)}: ${[value, unit].join(' ').trim()}`),
    ...thresholds.map(
      ({ meaning, value, unit, source }) => `${asSentence(meaning)}: ${value} ${unit} (${source})`,
    ),
    `${asSentence(formula)}.`,
    doubt,
  ];
}
