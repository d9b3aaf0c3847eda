import { rungDays } from '#lib/checks/rung-days.ts';
import { scoredDays } from '#lib/checks/score.ts';
import { seenOnFilm } from '#lib/checks/seen-on-film.ts';
import { percentBehind, type SidePair, sidePairs } from '#lib/checks/side-pairs.ts';
import { type Standing, standingsOf } from '#lib/checks/standings.ts';
import { asPercent, inMeasure, passInWords, plainNumber } from '#lib/checks/words.ts';
import { FAULT_LABELS } from '#lib/domain/labels.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import { verdictInWords } from '#lib/views/looking/verdict-words.ts';
import type { Block } from './blocks.ts';
import type { ReportInput } from './input.ts';
import { day, heading, number, table, tableOr, text } from './say.ts';

const RECENT_DAYS = 84;
const PAIRS = 6;

/** Where the client stands on each ladder and side, what the next rung asks, and left against right. */
export function trainingSection(input: ReportInput): Block[] {
  return [
    heading(2, 'Ladders'),
    ladders(input),
    nextRungs(input),
    heading(2, 'Left against right'),
    ...sides(input),
  ];
}

function ladders({ view, limits, period, record }: ReportInput): Block {
  const filmed = new Set(record.films.filter((film) => film.lookedAt !== null).map((film) => film.rung));
  const rows = standingsOf(view).map((standing) => {
    const { rung, side, from } = standing;
    const last = scoredDays(view, rung, side, limits).at(-1);
    return [
      rung.ladder,
      side === 'both' && !rung.eachSide ? '' : side,
      rung.name,
      day(from),
      number(daysBetween(from, period.to)),
      passInWords(rung),
      last ? `${asPercent(last.score)} on ${day(last.date)}` : 'no scored day',
      onFilm(view, standing, filmed.has(rung.name)),
    ];
  });
  return tableOr(
    'no rung is set.',
    table(
      'Where the client stands',
      'placements.csv',
      [
        'Ladder',
        'Side',
        'Rung',
        'Since',
        'Days on it#',
        'Pass mark',
        'Share of the pass mark',
        'Seen on film',
      ],
      rows,
    ),
  );
}

/** "clean, 19 March 2026", "not clean: hips turn, 19 March 2026", "yes", "no; the pass needs it". */
function onFilm(view: ReportInput['view'], standing: Standing, isLookedAt: boolean): string {
  const seen = seenOnFilm(view, standing, '');
  if (seen) return `${verdictInWords(seen)}, ${day(seen.date)}`;
  if (isLookedAt) return 'yes';
  return standing.rung.needsFilm ? 'no; the pass needs it' : 'no';
}

function nextRungs({ view }: ReportInput): Block {
  const rows = standingsOf(view).flatMap(({ rung, side }) => {
    const next = [...view.rungs.values()].find(
      (one) => one.ladderId === rung.ladderId && one.position === rung.position + 1,
    );
    const top = (of: typeof rung) =>
      Object.entries(of.weights)
        .sort(([, a], [, b]) => b - a)
        .slice(0, 3)
        .map(([tissue, weight]) => `${tissue.replaceAll('-', ' ')} ${weight}`)
        .join(', ');
    const line = (of: typeof rung, which: string) => [
      `${which}: ${of.name}${side === 'both' ? '' : `, ${side}`}`,
      passInWords(of),
      number(of.share),
      top(of),
    ];
    return [line(rung, 'Now'), ...(next ? [line(next, 'Next')] : [])];
  });
  return tableOr(
    'no rung is set.',
    table(
      'What the goal asks: this rung and the next',
      'rungs.csv',
      ['Rung', 'Pass mark', 'Share of body weight on the hands#', 'Highest stress by tissue, 0-1'],
      rows,
    ),
  );
}

function sides(input: ReportInput): Block[] {
  const { view, period, history } = input;
  const from = addDays(period.to, -RECENT_DAYS);
  const rows = [...view.rungs.values()]
    .filter((rung) => rung.eachSide)
    .flatMap((rung) => {
      const pairs = sidePairs(rungDays(view, rung.id), rung).filter((pair) => pair.date > from);
      const last = pairs.at(-1);
      if (!last) return [];
      const recent = pairs.slice(-PAIRS);
      return [
        [
          rung.name,
          day(last.date),
          inMeasure(last.left, rung),
          inMeasure(last.right, rung),
          number(pairs.length),
          behindInWords(recent),
          sureInWords(recent),
        ],
      ];
    });
  return [
    tableOr(
      `no drill was done clean on both sides of one day in the last ${RECENT_DAYS} days.`,
      table(
        'Same-day pairs (mean of the clean sets both sides have)',
        'sets.csv',
        [
          'Drill',
          'Newest pair',
          'Left',
          'Right',
          'Pairs in 84 days#',
          `Median of the last ${PAIRS}`,
          'How sure',
        ],
        rows,
      ),
    ),
    faults(history, from, period.to),
    text(
      'Strength and balance stand in the drills above. Range is in the drills measured in degrees or centimetres, and in assessments.csv; a side without a number was not measured.',
      'small',
    ),
  ];
}

function behindInWords(pairs: readonly SidePair[]): string {
  const middle = median(pairs.map((pair) => percentBehind(pair, 'left'))) ?? 0;
  if (Math.abs(middle) < 1) return 'level';
  return `${middle > 0 ? 'left' : 'right'} ${plainNumber(Math.abs(middle), 0)} % behind`;
}

/** How many of the last pairs point the same way: a small count is little to go by. */
function sureInWords(pairs: readonly SidePair[]): string {
  const left = pairs.filter((pair) => pair.left < pair.right).length;
  const right = pairs.filter((pair) => pair.right < pair.left).length;
  const said = `${Math.max(left, right)} of ${pairs.length} pairs the same way`;
  return pairs.length < PAIRS ? `${said}: few` : said;
}

function faults(history: ReportInput['history'], from: string, to: string): Block {
  const counts = new Map<string, { left: number; right: number }>();
  for (const { date, sets } of history.checkIns) {
    if (date <= from || date > to) continue;
    for (const set of sets) {
      if (set.side === 'both') continue;
      for (const fault of set.faults) {
        const there = counts.get(FAULT_LABELS[fault]) ?? { left: 0, right: 0 };
        there[set.side] += 1;
        counts.set(FAULT_LABELS[fault], there);
      }
    }
  }
  return tableOr(
    `none was told in sets of one side in the last ${RECENT_DAYS} days.`,
    table(
      'Faults in sets of one side',
      'sets.csv',
      ['Fault', 'Sets left#', 'Sets right#'],
      [...counts].map(([fault, { left, right }]) => [fault, number(left), number(right)]),
    ),
  );
}
