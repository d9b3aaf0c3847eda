import { beforeAll, expect, test } from 'vitest';
import { dateInWords } from '#lib/checks/words.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { ignacio } from '#prisma/demo/named/ignacio.ts';
import { type Opened, packOf } from '#tests/fixtures/open-pack.ts';
import { contentOf, WHOLE } from '#tests/fixtures/pack-content.ts';
import { type ReadPdf, readPdf } from '#tests/fixtures/read-pdf.ts';

// A client who trains both sides: the table of same-day pairs, made again from sets.csv, check_ins.csv and rungs.csv.
const DAYS = 84;
const LAST = 6;
const SOFT = ['sprung-floor', 'grass', 'sand', 'thick-mat'];

type Row = Record<string, string>;
let pack: Opened;
let pdf: ReadPdf;
beforeAll(async () => {
  const { history, extra } = ignacio('2026-11-25');
  const about = {
    goal: extra.goal,
    birthYear: extra.birthYear,
    usualSessionMinutes: extra.sessionMinutes,
  };
  // Up to the days on which a side fell behind.
  pack = await packOf(contentOf(history, { about }), { ...WHOLE, period: { from: null, to: '2026-09-10' } });
  pdf = await readPdf(pack.bytes('data/report.pdf'));
}, 60_000);

const mean = (values: number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
const middleOf = (values: number[]) => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const [lower = 0, upper = 0] = [sorted[half - 1], sorted[half]];
  return sorted.length % 2 === 1 ? upper : (lower + upper) / 2;
};

/** Left and right of a drill on each day that says something, oldest first. */
function pairsOf(rung: Row): { date: string; left: number; right: number }[] {
  const last = pack.rows('load_by_week').at(-1)?.to ?? '';
  const soft = new Set(
    pack
      .rows('check_ins')
      .filter((row) => SOFT.includes(row.ground ?? ''))
      .map((row) => row.date),
  );
  const sets = pack
    .rows('sets')
    .filter(
      (row) =>
        row.rung === rung.rung &&
        row.ladder === rung.ladder &&
        row.check_in_replaced !== 'yes' &&
        row.how !== 'not-done',
    );
  const days = [...new Set(sets.map((row) => row.date ?? ''))]
    .filter((date) => date > addDays(last, -DAYS) && date <= last && !soft.has(date))
    .sort();
  return days.flatMap((date) => {
    const own = sets.filter((row) => row.date === date);
    if (!own.some((row) => row.how === 'typed' || row.how === 'timed')) return [];
    const results = (side: string) =>
      own
        .filter((row) => row.side === side && row.clean === 'yes' && row.done_in_unit !== '')
        .map((row) => ({
          value: Number(row.done_in_unit),
          target: Number(row.planned_in_unit || rung.pass_target_in_unit),
        }));
    const [left, right] = [results('left'), results('right')];
    const both = Math.min(left.length, right.length);
    if (both === 0) return [];
    const compared = [left.slice(0, both), right.slice(0, both)];
    if (compared.flat().every(({ value, target }) => value >= target)) return [];
    const [l = [], r = []] = compared.map((those) => those.map(({ value }) => value));
    return [{ date, left: mean(l), right: mean(r) }];
  });
}

test('the same-day pairs are those of the sets', () => {
  const shown = pdf.tables.find(({ caption }) => caption.startsWith('Same-day pairs'));
  const again = pack
    .rows('rungs')
    .filter((rung) => rung.each_side === 'yes')
    .flatMap((rung) => {
      const pairs = pairsOf(rung);
      const last = pairs.at(-1);
      if (!last) return [];
      const recent = pairs.slice(-LAST);
      const behind = middleOf(
        recent.map(({ left, right }) => ((right - left) / Math.max(left, right)) * 100),
      );
      const sameWay = Math.max(
        recent.filter(({ left, right }) => left < right).length,
        recent.filter(({ left, right }) => right < left).length,
      );
      return [
        {
          drill: rung.rung,
          newest: dateInWords(last.date),
          left: last.left,
          right: last.right,
          pairs: pairs.length,
          behind,
          sure: `${sameWay} of ${recent.length} pairs the same way`,
        },
      ];
    });
  expect(again.length).toBeGreaterThan(0);
  expect(again.some(({ pairs, behind }) => pairs > LAST && behind > 5)).toBe(true);
  expect(shown?.rows.map(([drill]) => drill)).toEqual(again.map(({ drill }) => drill));
  again.forEach((row, at) => {
    const [, newest, left = '', right = '', pairs, behind = '', sure = ''] = shown?.rows[at] ?? [];
    expect(newest).toBe(row.newest);
    expect(Number.parseFloat(left)).toBeCloseTo(row.left, 0);
    expect(Number.parseFloat(right)).toBeCloseTo(row.right, 0);
    expect(pairs).toBe(String(row.pairs));
    if (Math.abs(row.behind) < 1) expect(behind).toBe('level');
    else
      expect(behind).toBe(`${row.behind > 0 ? 'left' : 'right'} ${Math.abs(row.behind).toFixed(0)} % behind`);
    expect(sure).toContain(row.sure);
  });
});
