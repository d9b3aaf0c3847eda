import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { exceeds, reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { roundTo } from '../in-numbers.ts';
import { biggerSessions, type HeavyTissue, heavyTissues, isBig } from '../load-causes.ts';
import { loadFigures } from '../load-figures.ts';
import { allCauses, type Jump, jumpSentence, jumpStep, jumpWorking } from '../load-jump-words.ts';
import { loadsOf } from '../load-series.ts';
import { daysHere } from '../new-start.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { totalUpTo, usualWeek } from '../usual-week.ts';

const SUBJECT: Subject = { key: 'load', label: '' };

/**
 * Raised when the 7-day total is over the usual week and the cause is visible: bigger sessions, more sets of a drill
 * that loads a tissue, or a week far over the largest of eight. One reason a client; tissues are facts inside it.
 * Unknown days make the total a lower bound: it may raise, not clear. Own rule.
 */
export const loadJump: Check = {
  kind: 'load-jump',
  title: 'Load jump',
  question: 'Is the last week far bigger than this client’s usual weeks, and what made it so?',
  evaluate: (view, limits) => [judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  if (daysHere(view) <= limits['coldStart.days']) return firstWeeks(view, limits);
  const { session } = loadsOf(view);
  const tissues = heavyTissues(view, limits);
  const usual = usualWeek(view, session, limits);
  const week = totalUpTo(session, view.days.length - 1, limits['week.days']);
  if (!usual.enough && tissues.length === 0) {
    return notEnough(`${usual.weeks} of ${usual.needed} ordinary weeks known`);
  }
  const causes = sessionCauses(view, usual.enough ? usual.usual : undefined, limits);
  const clear: Outcome = {
    status: 'clear',
    kind: 'load-jump',
    subject: SUBJECT,
    lowerBound: week.known < week.of,
  };
  const caused = causes.sessions || causes.largest || tissues.some(({ cause }) => cause);
  if (!caused || isAccepted(view, week.total, limits)) return clear;
  const figures = loadFigures(view, session, limits);
  return raised(view, { ...causes, figures, tissues, told: undefined }, limits);
}

/** Causes (i) and (iii), which look at session load. */
function sessionCauses(view: ClientView, usual: number | undefined, limits: Limits) {
  const none = { sessions: undefined, largest: undefined };
  const { session } = loadsOf(view);
  const last = view.days.length - 1;
  const { total } = totalUpTo(session, last, limits['week.days']);
  if (usual === undefined || !isBig(total, usual, limits['loadJump.floorAu'], limits)) return none;
  const largest = largestWeek(view, limits);
  const farOver =
    reaches(total, limits['loadJump.bigWeekRatio'] * usual) &&
    reaches(total, limits['loadJump.largestRatio'] * largest);
  const over = reaches(total, limits['loadJump.weekRatio'] * usual);
  return {
    sessions: over ? biggerSessions(view, limits) : undefined,
    largest: farOver ? largest : undefined,
  };
}

/** The largest 7-day total of the weeks before the last 7 days, AU. */
function largestWeek(view: ClientView, limits: Limits): number {
  const { session } = loadsOf(view);
  const length = limits['week.days'];
  const newest = view.days.length - 1 - length;
  const oldest = newest - limits['loadJump.largestWeeks'] * length + length;
  let largest = 0;
  for (let end = Math.max(0, oldest); end <= newest; end += 1) {
    largest = Math.max(largest, totalUpTo(session, end, length).total);
  }
  return largest;
}

/** The coach saw this jump in the plan editor and accepted it: silent unless it comes out bigger. */
function isAccepted(view: ClientView, total: number, limits: Limits): boolean {
  const accepted = view.planOn(view.asOf.date)?.acceptedWeekAu;
  return accepted != null && !exceeds(total, limits['loadJump.acceptedMargin'] * accepted);
}

/** Weeks 1-4: only the total, only against what the client told at the start, only watch. */
function firstWeeks(view: ClientView, limits: Limits): Outcome {
  const told = view.history.client.toldWeekAu;
  const figures = loadFigures(view, loadsOf(view).session, limits);
  const { week, known28 } = figures;
  if (told === null || told <= 0) return notEnough(`${known28.known} of ${known28.of} days known`);
  const over =
    exceeds(week.total, limits['loadJump.toldRatio'] * told) &&
    isBig(week.total, told, limits['loadJump.floorAu'], limits) &&
    !isAccepted(view, week.total, limits);
  if (over)
    return raised(view, { figures, tissues: [], told, sessions: undefined, largest: undefined }, limits);
  return { status: 'clear', kind: 'load-jump', subject: SUBJECT, lowerBound: week.known < week.of };
}

function raised(view: ClientView, jump: Jump, limits: Limits): Outcome {
  const { week, usual, known28 } = jump.figures;
  const against = jump.told ?? (usual.enough ? usual.usual : undefined);
  const ratio = against ? week.total / against : undefined;
  const highest = Math.max(
    ratio ?? 0,
    ...jump.tissues.filter(({ cause }) => cause).map((tissue) => tissue.ratio),
  );
  const level = jump.told === undefined && reaches(highest, limits['loadJump.actRatio']) ? 'act' : 'watch';
  return findingOf(
    {
      kind: 'load-jump',
      subject: SUBJECT,
      level,
      sentence: jumpSentence(jump, ratio),
      short: highest > 0 ? `load ${roundTo(highest, 1)} × usual` : 'load jump',
      since: sinceOf(view, jump, limits),
      step: { kind: 'cut-volume', text: jumpStep(jump) },
      clears: 'The 7-day total comes back to usual, or the last sessions do, with all 7 days known.',
      evidence: {
        weekAu: roundTo(week.total, 1),
        usualAu: against === undefined ? null : roundTo(against, 1),
        ratio: ratio === undefined ? null : roundTo(ratio, 2),
        severity: Math.floor(highest * 2) / 2,
        tissues: jump.tissues.map(nameOf).join(','),
        cause: allCauses(jump).join('; '),
        daysKnown: known28.known,
      },
      ...jumpWorking(jump),
    },
    limits,
  );
}

function nameOf({ tissue, side }: HeavyTissue): string {
  return `${tissue}:${side}`;
}

function sinceOf(view: ClientView, jump: Jump, limits: Limits): string {
  const weekStart = view.days[Math.max(0, view.days.length - limits['week.days'])]?.date ?? view.asOf.date;
  const drill = jump.tissues.find(({ cause }) => cause)?.cause;
  const byDrill = drill ? view.days[drill.from]?.date : undefined;
  return jump.sessions?.from ?? byDrill ?? weekStart;
}

function notEnough(missing: string): Outcome {
  return { status: 'not-enough-history', kind: 'load-jump', subject: SUBJECT, missing };
}
