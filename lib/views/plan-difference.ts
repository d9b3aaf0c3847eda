import { SUPPORT_LABELS } from '#lib/domain/labels.ts';
import type { PlanLine } from '#lib/domain/plan-line.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { GONE, type NamedRung, perWeek, planDose, planItemInWords } from './plan-words.ts';
import { shortDate } from './say-date.ts';

type Session = { label: string; restSeconds: number | null; warmUp: string; warmUpMinutes: number };
export type ComparedPlan = {
  until: string | null;
  sessionsPerWeek: number;
  easyWeeks: string[];
  testWeeks: string[];
  noKitWeeks: string[];
  skillsInFocus: string[];
  sessions: Session[];
  items: PlanLine[];
};
type Items = Pick<ComparedPlan, 'items'>;
type Rungs = ReadonlyMap<string, NamedRung & { ladderId: string }>;

/**
 * What a new version of a plan changes, in plain lines, drills first: what is new, what is gone, what is another rung or
 * dose. Empty: nothing that is said here.
 */
export function planDifference(before: ComparedPlan, after: ComparedPlan, rungs: Rungs): string[] {
  return [
    ...drillLines(before, after, rungs),
    ...sessionLines(before, after),
    ...changed('Sessions a week', String(before.sessionsPerWeek), String(after.sessionsPerWeek)),
    ...changed('In focus', list(before.skillsInFocus), list(after.skillsInFocus)),
    ...changed('Last day', dayOf(before.until), dayOf(after.until)),
    ...weekLines('Easy weeks', before.easyWeeks, after.easyWeeks),
    ...weekLines('Test weeks', before.testWeeks, after.testWeeks),
    ...weekLines('Weeks without kit', before.noKitWeeks, after.noKitWeeks),
  ];
}

/** The same for the client: only what is done in training. */
export function drillDifference(before: Items, after: Items, rungs: Rungs): string[] {
  return drillLines(before, after, rungs);
}

/** A line that may hold for left, right or both: `text` puts the side in its place. */
type SidedLine = { side: Side; text: (side: string) => string };

function drillLines({ items: before }: Items, { items: after }: Items, rungs: Rungs): string[] {
  const used = new Set<PlanLine>();
  const take = (match: (item: PlanLine) => boolean) => {
    const found = before.find((item) => !used.has(item) && match(item));
    if (found) used.add(found);
    return found;
  };
  // The same rung is looked for first, so that of two rungs of one ladder each finds its own line.
  const same = new Map(after.map((item) => [item, take((one) => isSameRung(one, item))]));
  const lines = after.flatMap((item): SidedLine[] => {
    const ladder = rungs.get(item.rungId)?.ladderId;
    const was =
      same.get(item) ??
      take(
        (one) =>
          one.session === item.session && sidesMeet(one, item) && rungs.get(one.rungId)?.ladderId === ladder,
      ) ??
      take((one) => one.rungId === item.rungId && sidesMeet(one, item));
    return was ? changeLine(was, item, rungs) : [newLine(item, rungs)];
  });
  const gone = before
    .filter((item) => !used.has(item))
    .map((item): SidedLine => {
      const name = rungs.get(item.rungId)?.name ?? GONE;
      return { side: item.side, text: (side) => `No longer in ${inSession(item)}: ${name}${side}` };
    });
  return joined([...lines, ...gone]);
}

/** Left and right with the same words are said once. */
function joined(lines: SidedLine[]): string[] {
  const sides = new Map<string, { line: SidedLine; sides: Set<Side> }>();
  for (const line of lines) {
    const known = sides.get(line.text('')) ?? { line, sides: new Set() };
    sides.set(line.text(''), { ...known, sides: known.sides.add(line.side) });
  }
  return [...sides.values()].map(({ line, sides: on }) => {
    const [only] = on;
    return line.text(on.size > 1 || only === undefined || only === 'both' ? '' : `, ${only}`);
  });
}

function isSameRung(a: PlanLine, b: PlanLine): boolean {
  return a.session === b.session && a.rungId === b.rungId && sidesMeet(a, b);
}

function sidesMeet(a: PlanLine, b: PlanLine): boolean {
  return a.side === b.side || a.side === 'both' || b.side === 'both';
}

function newLine(item: PlanLine, rungs: Rungs): SidedLine {
  const rung = rungs.get(item.rungId);
  const rest = planItemInWords({ ...item, side: 'both' }, rung).slice((rung?.name ?? GONE).length);
  return {
    side: item.side,
    text: (side) => `New in ${inSession(item)}: ${rung?.name ?? GONE}${side}${rest}`,
  };
}

function changeLine(before: PlanLine, after: PlanLine, rungs: Rungs): SidedLine[] {
  const parts = [
    ...(before.rungId === after.rungId ? [] : [`was ${rungs.get(before.rungId)?.name ?? GONE}`]),
    ...part(doseOf(before, rungs), doseOf(after, rungs)),
    ...part(perWeek(before.timesPerWeek), perWeek(after.timesPerWeek)),
    ...(before.session === after.session ? [] : [`was in ${inSession(before)}`]),
    ...yesNo('not two days running', before.notTwoDaysRunning, after.notTwoDaysRunning),
    ...part(supportOf(before), supportOf(after)),
    ...(before.stopRule === after.stopRule ? [] : [after.stopRule || 'no stop rule any more']),
    ...pairPart(before, after, rungs),
    ...kitPart(before, after, rungs),
  ];
  if (parts.length === 0) return [];
  const name = rungs.get(after.rungId)?.name ?? GONE;
  return [
    {
      side: after.side,
      text: (side) => `${capital(inSession(after))}, ${name}${side}: ${parts.join('; ')}`,
    },
  ];
}

function supportOf({ support }: PlanLine): string {
  return support === null ? 'no support named' : SUPPORT_LABELS[support];
}

function doseOf(item: PlanLine, rungs: Rungs): string {
  return planDose(item, rungs.get(item.rungId)?.measure);
}

function pairPart(before: PlanLine, after: PlanLine, rungs: Rungs): string[] {
  if (before.pairedWith === after.pairedWith) return [];
  const name = after.pairedWith === null ? undefined : (rungs.get(after.pairedWith)?.name ?? GONE);
  return [name ? `a pyramid with ${name}` : 'no pyramid any more'];
}

function kitPart(before: PlanLine, after: PlanLine, rungs: Rungs): string[] {
  if (before.noKitRungId === after.noKitRungId) return [];
  const name = after.noKitRungId === null ? undefined : (rungs.get(after.noKitRungId)?.name ?? GONE);
  return [name ? `without kit ${name}` : 'nothing instead of it without kit'];
}

function sessionLines(before: ComparedPlan, after: ComparedPlan): string[] {
  return after.sessions.flatMap((session) => {
    const was = before.sessions.find((one) => one.label === session.label);
    if (!was) return [];
    const parts = [...part(restOf(was), restOf(session)), ...part(warmUpOf(was), warmUpOf(session))];
    return parts.length === 0
      ? []
      : [`${capital(inSession({ session: session.label }))}: ${parts.join('; ')}`];
  });
}

function restOf({ restSeconds }: Session): string {
  return restSeconds === null ? 'rest as needed' : `rest ${restSeconds} s`;
}

function warmUpOf({ warmUp, warmUpMinutes }: Session): string {
  const minutes = warmUpMinutes > 0 ? `${warmUpMinutes} min` : '';
  const said = [minutes, warmUp.replace(/\s*\n\s*/g, ', ')].filter(Boolean).join(', ');
  return said ? `warm-up ${said}` : 'no warm-up written';
}

function weekLines(title: string, before: string[], after: string[]): string[] {
  const said = (weeks: string[]) =>
    weeks.length === 0
      ? 'none'
      : [...weeks]
          .sort()
          .map((week) => `from ${shortDate(week)}`)
          .join(', ');
  return changed(title, said(before), said(after));
}

function changed(title: string, before: string, after: string): string[] {
  return before === after ? [] : [`${title}: ${after}, was ${before}`];
}

function part(before: string, after: string): string[] {
  return before === after ? [] : [`${after}, was ${before}`];
}

function yesNo(what: string, before: boolean, after: boolean): string[] {
  if (before === after) return [];
  return [after ? what : `no longer “${what}”`];
}

function inSession({ session }: { session: string }): string {
  return session === 'short' ? 'the short session' : `session ${session}`;
}

function list(names: string[]): string {
  return names.length === 0 ? 'none' : names.join(', ');
}

function dayOf(date: string | null): string {
  return date === null ? 'open' : shortDate(date);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
