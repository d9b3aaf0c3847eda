import { forecast } from '#lib/checks/forecast.ts';
import { daysHere } from '#lib/checks/new-start.ts';
import type { TimedRung } from '#lib/checks/passed-rungs.ts';
import { standingsOf } from '#lib/checks/standings.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { counted } from '#lib/checks/words.ts';
import type { Working } from '#lib/domain/finding.ts';
import { asSentence } from '#lib/domain/labels.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { type DrawnForecast, drawnForecast } from './drawn-forecast.ts';

export type LadderForecast = {
  key: string;
  /** One sentence, for the coach. */
  sentence: string;
  /** What it was computed from, line by line; empty where it is too early to say. */
  working: string[];
  drawn: DrawnForecast | undefined;
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
      const early = tooEarly(view, own, limits);
      return [
        {
          key: standing.key,
          sentence: onSide(standing.side, early ?? found.sentence),
          working: early === undefined ? linesOf(found.working) : [],
          drawn: early === undefined ? drawnForecast(found, view.asOf.date) : undefined,
        },
      ];
    });
}

/** In the first weeks nothing is known of the client's pace, nor of how regularly they train. */
function tooEarly(
  view: ClientView,
  own: readonly { name: string; position: number }[],
  limits: Limits,
): string | undefined {
  const [here, needed] = [daysHere(view), limits['coldStart.days']];
  if (here >= needed) return undefined;
  const last = [...own].sort((a, b) => b.position - a.position)[0]?.name ?? '';
  return `Last rung, ${last}: too early to say, ${here} of ${counted(needed, 'day')} here.`;
}

function onSide(side: Side, sentence: string): string {
  return side === 'both'
    ? sentence
    : `${asSentence(side)}, ${sentence.slice(0, 1).toLowerCase()}${sentence.slice(1)}`;
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
