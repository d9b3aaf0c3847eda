import { beforeAll, expect, test } from 'vitest';
import { TISSUE_LABELS } from '#lib/checks/tissues.ts';
import { dateInWords } from '#lib/checks/words.ts';
import { placeInWords } from '#lib/domain/labels.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { PAIN_REGIONS, PAIN_SIDES, TISSUES } from '#lib/domain/vocabulary.ts';
import { type Opened, packOf } from '#tests/fixtures/open-pack.ts';
import { WHOLE } from '#tests/fixtures/pack-content.ts';
import { type ReadPdf, readPdf } from '#tests/fixtures/read-pdf.ts';
import { demoContent } from './demo-pack.ts';

let pack: Opened;
let pdf: ReadPdf;
beforeAll(async () => {
  pack = await packOf(demoContent(), WHOLE);
  pdf = await readPdf(pack.bytes('data/report.pdf'));
}, 60_000);

type Rows = string[][];
const day = (date = '') => (date === '' ? '' : dateInWords(date));
const dayThere = (instant = '') => day(localDateOf(new Date(instant), 'Asia/Tokyo'));
const sum = (values: number[]) => Math.round(values.reduce((all, one) => all + one, 0) * 10) / 10;
const placeOf = (row: Record<string, string>) => `${row.region}:${row.side}`;
const lastDay = () => pack.rows('load_by_week').at(-1)?.to ?? '';
const before = (days: number) => addDays(lastDay(), -days);
const joint = () => pack.rows('pain').filter((row) => row.kind === 'joint');

/** For each table of the PDF, its rows made again from the CSVs; the newest come first. */
const FROM_CSV: Record<string, (caption: string, rows: Rows) => Rows> = {
  'Session load by week': () =>
    [...pack.rows('load_by_week')]
      .reverse()
      .slice(0, 26)
      .map((row) => [day(row.to), row.days_known ?? '', row.days_trained ?? '', row.session_load_au ?? '']),
  'Work by week': (caption) => {
    const tissue = TISSUES.find((one) => caption.includes(`: ${TISSUE_LABELS[one]}`));
    const rows = pack.rows('tissue_by_week').filter((row) => row.tissue === tissue);
    const weeks = [
      ...new Set(
        pack
          .rows('load_by_week')
          .slice(-26)
          .map((row) => row.to),
      ),
    ].reverse();
    return weeks.flatMap((to) => {
      const of = rows.filter((row) => row.to === to);
      if (of.length === 0) return [];
      const cells = ['left', 'right'].flatMap((side) => {
        const row = of.find((one) => one.side === side);
        return [row?.sets, row?.hard_sets, row?.seconds_under_load_s, row?.load_bw_s].map(
          (cell) => cell ?? '',
        );
      });
      return [[day(to), ...cells]];
    });
  },
  'Joint or tendon pain, 0-10': (_, rows) =>
    rows.map(([place = '']) => {
      const own = joint().filter((row) => placeOf(row) === keyOf(place));
      const told = highestByDay(own).filter(([, value]) => value > 0);
      const first = told[0]?.[0] ?? '';
      const calm = pack
        .rows('check_ins')
        .filter((row) => row.nothing_hurts === 'yes' && (row.date ?? '') > first)
        .map((row) => ({ date: row.date ?? '', pain_0_10: '0' }));
      const days = highestByDay([...own, ...calm]);
      const last = days.at(-1);
      const recent = days.filter(([date]) => date > before(28)).map(([, value]) => value);
      const highest = Math.max(...told.map(([, value]) => value));
      const top = told.find(([, value]) => value === highest);
      return [
        place,
        day(first),
        String(last?.[1]),
        day(last?.[0]),
        recent.length === 0 ? 'not told' : String(Math.max(...recent)),
        String(highest),
        day(top?.[0]),
      ];
    }),
  'by day': (caption) => {
    const place = keyOf(caption.slice(0, caption.indexOf(', by day')));
    const own = joint().filter((row) => placeOf(row) === place && (row.date ?? '') > before(84));
    const dates = [...new Set(own.map((row) => row.date))].sort().reverse();
    const cell = (date: string | undefined, moment: string) => {
      const scores = own
        .filter((row) => row.date === date && row.moment === moment)
        .map((row) => Number(row.pain_0_10));
      return scores.length === 0 ? '' : String(Math.max(...scores));
    };
    return dates
      .map((date) => [
        day(date),
        ...['during', 'after', 'morning', 'today'].map((moment) => cell(date, moment)),
      ])
      .filter((row) => row.slice(1).some((one) => Number(one) > 0));
  },
  'Drills that load it': (_, rows) =>
    rows.map((row) => {
      const name = (row[0] ?? '').split(', on ')[0];
      const sets = pack
        .rows('sets')
        .filter((one) => one.rung === name && (one.date ?? '') > before(84) && one.how !== 'not-done');
      const days = new Set(sets.map((one) => one.date));
      return [row[0] ?? '', row[1] ?? '', String(days.size), String(sets.length), ...row.slice(4)];
    }),
  'Danger signs told': () =>
    pack
      .rows('danger_signs')
      .map((row) => [day(row.date), row.sign ?? '', row.gone_within_a_minute ?? '', '']),
  'Where the client stands': (_, rows) =>
    rows.map((row) => {
      const placed = pack
        .rows('placements')
        .filter((one) => one.rung === row[2] && (row[1] === '' || one.side === row[1] || one.side === 'both'))
        .at(-1);
      const rung = pack.rows('rungs').find((one) => one.rung === row[2] && one.ladder === row[0]);
      const days = (Date.parse(lastDay()) - Date.parse(placed?.from ?? '')) / 86_400_000;
      expect(row[5]).toContain(rung?.pass_target_in_unit);
      return [row[0] ?? '', row[1] ?? '', row[2] ?? '', day(placed?.from), String(days), ...row.slice(5)];
    }),
  'What the goal asks': (_, rows) =>
    rows.map((row) => {
      const name = (row[0] ?? '').replace(/^(Now|Next): /, '').replace(/, (left|right)$/, '');
      const rung = pack.rows('rungs').find((one) => one.rung === name);
      return [row[0] ?? '', row[1] ?? '', rung?.share_of_body_weight ?? '', ...row.slice(3)];
    }),
  'Plan versions': () =>
    [...new Set(pack.rows('plans').map((row) => row.plan_version))].reverse().map((version = '') => {
      const lines = pack.rows('plans').filter((row) => row.plan_version === version);
      const [plan] = lines;
      return [
        version,
        day(plan?.from),
        plan?.last_day ? day(plan.last_day) : 'open',
        plan?.sessions_per_week ?? '',
        plan?.by ?? '',
        plan?.why ?? '',
        String(lines.length),
      ];
    }),
  Limits: (_, rows) =>
    pack
      .rows('limits')
      .map((row, index) => [
        rows[index]?.[0] ?? '',
        day(row.from),
        row.last_day ? day(row.last_day) : 'until further word',
        row.said_by ?? '',
        row.words ?? '',
      ]),
  'Clinicians’ words': () =>
    pack
      .rows('clinician_words')
      .map((row) => [
        day(row.date),
        `${row.side} ${row.region}`.replaceAll('-', ' ').trim(),
        row.words ?? '',
        day(row.look_again_on),
      ]),
  Reasons: () =>
    [...pack.rows('reasons')]
      .reverse()
      .map((row, index) => [
        row.kind === 'plan-ending' ? 'Plan ending' : 'Pain rising',
        day(row.since),
        row.sentence ?? '',
        row.closed_at_utc ? `${dayThere(row.closed_at_utc)}: ${row.closed_why}` : 'open',
        index === 1 ? 'right to tell: “It was the pulling.”' : '',
      ]),
  'Steps taken': () => {
    const [first, second] = pack.rows('steps_taken');
    return [
      [
        day(first?.taken_on),
        'Less volume',
        'pain rising',
        first?.words ?? '',
        `the same after ${first?.looked_after_days} days, better after ${second?.looked_after_days} days`,
      ],
    ];
  },
  'Questions and answers': () =>
    pack.rows('questions').map((row) => [dayThere(row.asked_at_utc), row.question ?? '', 'not yet', '']),
  'Told at the start': () => pack.rows('told_at_the_start').map((row) => [row.about ?? '', row.told ?? '']),
  'Days away': () => pack.rows('absences').map((row) => [row.kind ?? '', day(row.from), day(row.to)]),
  'The log': (_, rows) => {
    const days = pack.rows('load_by_day');
    const known = days.filter((row) => row.day === 'trained' || row.day === 'rest').length;
    const taken = days.filter((row) => row.day === 'taken-as-rest').length;
    const length = Number(rows[0]?.[2]);
    const sets = pack.rows('sets');
    const checkIns = String(pack.rows('check_ins').length);
    const count = [
      [known, length],
      [taken, length],
      [length - known - taken, length],
      [sets.filter((row) => row.how === 'as-planned').length, sets.length],
    ].map((row) => row.map(String));
    return rows.map((row, index) => [
      row[0] ?? '',
      ...(count[index] ?? [row[1] ?? '', checkIns]),
      row[3] ?? '',
    ]);
  },
  Consents: () =>
    pack
      .rows('consents')
      .map((row) => [
        (row.consent ?? '').replaceAll('-', ' '),
        row.text_version ?? '',
        dayThere(row.given_at_utc),
        row.given_by ?? '',
        '',
      ]),
  'Faults in sets of one side': (_, rows) =>
    rows.map(([fault = '']) => {
      const of = (side: string) =>
        pack
          .rows('sets')
          .filter((row) => (row.date ?? '') > before(84) && row.side === side)
          .filter((row) => countedFaults(row).includes(fault.replaceAll(' ', '-'))).length;
      return [fault, String(of('left')), String(of('right'))];
    }),
};

/** What was told, and what a coach saw on film: a clean film leaves only what the client felt. */
function countedFaults(row: Record<string, string>): string[] {
  const [told, seen] = [row.faults, row.faults_on_film].map((cell = '') => cell.split('; '));
  if (row.on_film === 'clean') return (told ?? []).filter((fault) => fault === 'stopped-by-pain');
  return [...(told ?? []), ...(seen ?? [])];
}

function keyOf(place: string): string {
  const sentence = place.charAt(0).toLowerCase() + place.slice(1);
  for (const region of PAIN_REGIONS) {
    for (const side of PAIN_SIDES) if (placeInWords(region, side) === sentence) return `${region}:${side}`;
  }
  throw new Error(`no place is called ${place}`);
}

function highestByDay(rows: Record<string, string>[]): [string, number][] {
  const days = new Map<string, number>();
  for (const row of rows)
    days.set(row.date ?? '', Math.max(days.get(row.date ?? '') ?? 0, Number(row.pain_0_10)));
  return [...days].sort(([a], [b]) => (a < b ? -1 : 1));
}

test('every table of the PDF says what the CSVs say, cell by cell', () => {
  expect(pdf.tables.length).toBeGreaterThan(12);
  let compared = 0;
  for (const { caption, rows } of pdf.tables) {
    const name = Object.keys(FROM_CSV).find((one) =>
      one === 'by day' ? caption.includes(', by day') : caption.startsWith(one),
    );
    expect(name, `a table nobody compares: ${caption}`).toBeDefined();
    const again = FROM_CSV[name ?? '']?.(caption, rows) ?? [];
    expect(rows, caption).toEqual(again.map((row) => row.map((cell) => cell.replace(/\s+/g, ' ').trim())));
    compared += rows.flat().length;
  }
  expect(compared).toBeGreaterThan(400);
});

test('the same tables stand in report.html', () => {
  const html = pack.text('data/report.html');
  expect(html).not.toMatch(/<script|https?:|src=|url\(/);
  const tables = [...html.matchAll(/<table>(.*?)<\/table>/gs)].map(([, table = '']) =>
    [...table.matchAll(/<tr>(.*?)<\/tr>/gs)]
      .slice(1)
      .map(([, row = '']) =>
        [...row.matchAll(/<t[dh][^>]*>(.*?)<\/t[dh]>/gs)].map(([, cell = '']) => plain(cell)),
      ),
  );
  expect(tables).toEqual(pdf.tables.map((table) => table.rows));
});

const plain = (html: string) =>
  html
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ')
    .trim();

test('the bars of the first page print the weeks of the CSV', () => {
  const bars = pdf.elements.find((one) => one.role === 'Figure');
  const weeks = pack.rows('load_by_week').slice(-12);
  expect(bars?.alt).toContain(weeks.map((row) => row.session_load_au || 'unknown').join(', '));
  for (const row of weeks) expect(bars?.text).toContain(row.session_load_au || 'unknown');
});

test('weeks are the sums of days, and days the sums of check-ins and sets', () => {
  const days = pack.rows('load_by_day');
  const of = (week: Record<string, string>) =>
    days.filter((row) => (row.date ?? '') >= (week.from ?? '') && (row.date ?? '') <= (week.to ?? ''));
  for (const week of pack.rows('load_by_week')) {
    const known = of(week).filter((row) => row.session_load_au !== '');
    expect(week.days_known).toBe(String(known.length));
    if (known.length > 0)
      expect(Number(week.session_load_au)).toBe(sum(known.map((row) => Number(row.session_load_au))));
  }
  for (const week of pack.rows('tissue_by_week')) {
    const column = `${(week.tissue ?? '').replaceAll('-', '_')}_${week.side}_bw_s`;
    expect(Number(week.load_bw_s)).toBe(sum(of(week).map((row) => Number(row[column] ?? 0))));
  }
  for (const row of days.filter((one) => one.day === 'trained')) {
    const told = pack.rows('check_ins').filter((one) => one.date === row.date && one.session_load_au !== '');
    expect(Number(row.session_load_au)).toBe(sum(told.map((one) => Number(one.session_load_au))));
  }
  const stress = new Map(pack.rows('rungs').map((row) => [row.rung, Number(row.stress_elbow_bending_0_1)]));
  const [week] = pack
    .rows('tissue_by_week')
    .filter((row) => row.tissue === 'elbow-bending' && row.side === 'right')
    .slice(-1);
  const sets = pack
    .rows('sets')
    .filter(
      (row) =>
        (row.date ?? '') >= (week?.from ?? '') &&
        (row.date ?? '') <= (week?.to ?? '') &&
        row.side !== 'left' &&
        row.how !== 'not-done' &&
        (stress.get(row.rung ?? '') ?? 0) > 0,
    );
  expect(week?.sets).toBe(String(sets.length));
});
