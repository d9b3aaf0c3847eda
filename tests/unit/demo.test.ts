import { describe, expect, it } from 'vitest';
import { CHECKS } from '#lib/checks/registry.ts';
import { runChecks } from '#lib/checks/run.ts';
import type { Flagged } from '#lib/domain/finding.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { addDays, demoDate, instantAt } from '#prisma/demo/calendar.ts';
import { demoClients, otherTeamClients } from '#prisma/demo/histories.ts';
import type { DemoClient } from '#prisma/demo/life.ts';

const TODAY = '2026-11-25';
const clients = demoClients(TODAY);
const bySlug = new Map(clients.map((client) => [client.extra.slug, client]));

/** What the checks say on the evening of a date, knowing only the plans that existed then. */
function flaggedOn({ history }: DemoClient, date: string): Flagged[] {
  const known = { ...history, plans: history.plans.filter((plan) => plan.from <= date) };
  const instant = instantAt(addDays(date, 1), '03:00', history.client.zone);
  return runChecks(known, { date, instant }).filter(
    (outcome): outcome is Flagged => outcome.status === 'flagged',
  );
}

/** Kinds raised in these weeks, looked at every `step` nights. */
function kindsIn(slug: string, weeks: [from: number, to: number], step = 1): Set<CheckKind> {
  const client = bySlug.get(slug);
  if (!client) throw new Error(`no demo client ${slug}`);
  const kinds = new Set<CheckKind>();
  const joined = client.history.client.joinedAt?.slice(0, 10) ?? '';
  for (
    let date = demoDate(TODAY, weeks[0], 1);
    date <= demoDate(TODAY, weeks[1], 7);
    date = addDays(date, step)
  ) {
    if (date >= joined) for (const { kind } of flaggedOn(client, date)) kinds.add(kind);
  }
  return kinds;
}

/** Kind, client, and the weeks in which it has to be said. */
const TOLD: [kind: CheckKind, slug: string, weeks: [number, number]][] = [
  ['step-up-earned', 'mirembe', [9, 9]],
  ['too-little-time', 'mirembe', [13, 15]],
  ['plan-outgrown', 'mirembe', [20, 20]],
  ['window-gap', 'mirembe', [22, 22]],
  ['pain-lingering', 'ignacio', [1, 2]],
  ['side-gap', 'ignacio', [14, 15]],
  ['one-side-fault', 'ignacio', [18, 20]],
  ['pain-after-ground', 'ignacio', [20, 21]],
  ['too-many-goals', 'haruto', [1, 1]],
  ['no-let-up', 'haruto', [5, 5]],
  ['stacked-stress', 'haruto', [9, 11]],
  ['load-jump', 'haruto', [12, 12]],
  ['new-hardest', 'haruto', [12, 12]],
  ['pain-rising', 'haruto', [12, 13]],
  ['pain-high', 'haruto', [13, 13]],
  ['too-hard', 'aroha', [6, 6]],
  ['stalled', 'aroha', [18, 19]],
  ['return-too-fast', 'leyla', [13, 14]],
  ['fading', 'leyla', [19, 23]],
  ['gone-quiet', 'leyla', [24, 24]],
  ['slipping', 'padraig', [12, 13]],
  ['question-waiting', 'padraig', [15, 16]],
  ['danger-sign', 'padraig', [17, 17]],
  ['limit-ending', 'padraig', [21, 21]],
  ['not-seen', 'padraig', [22, 24]],
  ['plan-ending', 'padraig', [24, 24]],
  ['film-waiting', 'bertrand', [26, 26]],
  ['asked-no-answer', 'ignacio', [18, 19]],
];
const built = new Set(CHECKS.map((check) => check.kind));

describe('the demo', () => {
  it('is 24 clients and two of another team, the same on every run', () => {
    expect(clients).toHaveLength(24);
    expect(otherTeamClients(TODAY)).toHaveLength(2);
    expect(JSON.stringify(demoClients(TODAY))).toBe(JSON.stringify(clients));
    expect(new Set(clients.map(({ history }) => history.client.zone)).size).toBeGreaterThan(18);
  });

  it('ends yesterday, whatever the day of the week', () => {
    for (const today of ['2026-02-28', '2026-03-01', '2027-01-01']) {
      const last = demoClients(today).flatMap(({ history }) =>
        history.checkIns.map((checkIn) => checkIn.date),
      );
      expect(last.sort().at(-1)).toBe(addDays(today, -1));
    }
  });

  it('keeps the rules of the tables: one placement a day, sets told once, amounts that can be', () => {
    for (const { history, extra } of clients) {
      const placed = history.placements.map(({ ladderId, side, from }) => `${ladderId} ${side} ${from}`);
      expect(new Set(placed).size, extra.slug).toBe(placed.length);
      for (const checkIn of history.checkIns) {
        const sets = checkIn.sets.map((set) => `${set.rungId} ${set.side} ${set.index}`);
        expect(new Set(sets).size, `${extra.slug} ${checkIn.date}`).toBe(sets.length);
        expect(checkIn.minutes ?? 1).toBeGreaterThan(0);
        expect(checkIn.effort ?? 1).toBeLessThanOrEqual(10);
      }
    }
  });

  it.each(TOLD.filter(([kind]) => built.has(kind)))('says %s for %s in its weeks', (kind, slug, weeks) => {
    expect([...kindsIn(slug, weeks)]).toContain(kind);
  });

  it('every check that is built is told by somebody', () => {
    const told = new Set(TOLD.map(([kind]) => kind));
    expect([...built].filter((kind) => !told.has(kind))).toEqual([]);
  });

  it('does not take twinges, single hard nights or equal days for trouble', () => {
    const quiet: CheckKind[] = [
      'pain-rising',
      'pain-lingering',
      'pain-high',
      'pain-after-ground',
      'no-let-up',
      'load-jump',
      'gone-quiet',
      'too-hard',
      'side-gap',
    ];
    for (const slug of ['priya', 'takumi', 'sina', 'meilin']) {
      const kinds = kindsIn(slug, [1, 26], 3);
      expect(
        quiet.filter((kind) => kinds.has(kind)),
        slug,
      ).toEqual([]);
    }
    expect(kindsIn('mirembe', [5, 20], 2)).not.toContain('pain-rising');
    expect(kindsIn('mirembe', [10, 16], 2)).not.toContain('stalled');
    expect(kindsIn('leyla', [9, 13])).not.toContain('gone-quiet');
    expect(kindsIn('haruto', [24, 26])).not.toContain('load-jump');
  }, 60_000);

  it('leaves a morning with something in every tier, and most clients fine', () => {
    const tiers = clients
      .filter(({ history }) => !['left', 'paused'].includes(history.client.standing))
      .map((client) => {
        const found = new Set(flaggedOn(client, addDays(TODAY, -1)).map((finding) => finding.tier));
        return (
          (['now', 'today', 'this-week', 'good-news'] as const).find((tier) => found.has(tier)) ?? 'fine'
        );
      });
    const count = (tier: string) => tiers.filter((each) => each === tier).length;
    expect(count('now')).toBe(1);
    expect(count('today')).toBeGreaterThanOrEqual(1);
    expect(count('today')).toBeLessThanOrEqual(3);
    expect(count('this-week')).toBeGreaterThanOrEqual(3);
    expect(count('this-week')).toBeLessThanOrEqual(5);
    expect(count('good-news')).toBeGreaterThanOrEqual(2);
    expect(count('good-news')).toBeLessThanOrEqual(4);
    expect(count('fine')).toBeGreaterThanOrEqual(10);
  });
});
