import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { expect, test } from 'vitest';
import { packedPeriod } from '#lib/handover/pack-report.ts';
import { reportPdf } from '#lib/handover/pdf/report-pdf.ts';
import type { Paper } from '#lib/handover/report/blocks.ts';
import { reportOf } from '#lib/handover/report/report.ts';
import { reportHtml } from '#lib/handover/report/report-html.ts';
import { aHistory } from '#tests/fixtures/history-builders.ts';
import { contentOf, WHOLE } from '#tests/fixtures/pack-content.ts';
import { readPdf } from '#tests/fixtures/read-pdf.ts';
import { sampleHistory } from '#tests/fixtures/sample-history.ts';

async function reportFor(name: string, history = sampleHistory()) {
  const content = contentOf({ ...history, client: { ...history.client, name } });
  return reportOf((await packedPeriod(content, WHOLE)).report);
}
async function pdfOf(report: ReturnType<typeof reportOf>, paper: Paper): Promise<Buffer> {
  return buffer(Readable.from(reportPdf(report, paper)));
}

test('tagged: language, title, marks, headings in order, heads of tables, words for figures', async () => {
  const report = await reportFor('Ada Example');
  const pdf = await readPdf(await pdfOf(report, 'A4'));
  expect([pdf.lang, pdf.marked, pdf.title]).toEqual(['en', true, report.title]);
  expect(pdf.size).toEqual([595, 842]);
  const levels = pdf.elements.flatMap(({ role }) => (/^H[1-6]$/.test(role) ? [Number(role[1])] : []));
  expect(levels[0]).toBe(1);
  expect(levels.filter((level) => level === 1)).toHaveLength(1);
  for (const [index, level] of levels.entries())
    expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1);
  for (const { caption, head } of pdf.tables) {
    expect(caption).toMatch(/ · \w+\.csv$/);
    expect(head.length, caption).toBeGreaterThan(1);
  }
  const figures = pdf.elements.filter((one) => one.role === 'Figure');
  expect(figures.length).toBeGreaterThan(0);
  for (const { alt } of figures) expect(alt?.length).toBeGreaterThan(20);
  expect(pdf.bookmarks).toContain('Pain');
  expect(pdf.pages[0]).toContain('Page 1 of');
  expect(pdf.pages[0]).toContain('It does not diagnose');
});

test('A4 and Letter; the same report gives the same bytes', async () => {
  const report = await reportFor('Ada Example');
  const letter = await pdfOf(report, 'Letter');
  expect((await readPdf(letter)).size).toEqual([612, 792]);
  expect((await pdfOf(report, 'Letter')).equals(letter)).toBe(true);
  expect(reportHtml(report, 'Letter')).toContain('@page{size:letter');
});

const NAMES = [
  'Łucja Żółć-Ěščřž',
  'Владимир Ерёмин',
  'Ελένη Παπαδοπούλου',
  'Արամ Խաչատրյան',
  'ნინო ბერიძე',
  'דנה כהן',
  'محمد عبد الله',
  '山田 はなこ タロウ',
  '王小明 刘伟',
  '김민준',
  'प्रिया शर्मा',
  'สมชาย ใจดี',
  "Siobhán O'Connor & Sons <b>",
];

test('names in thirteen scripts and signs are in the fonts, and come back as they were written', async () => {
  const pdf = await readPdf(await pdfOf(await reportFor(NAMES.join('; ')), 'A4'));
  const text = pdf.pages.join(' ');
  expect(text).not.toContain('\u25A1');
  expect(text).not.toContain('stand as boxes');
  const letters = new Set([...text.normalize('NFKC')]);
  const lost = [...NAMES.join('')].filter(
    (letter) => /[\p{L}\p{N}]/u.test(letter) && !letters.has(letter.normalize('NFKC')),
  );
  expect(lost).toEqual([]);
  for (const name of ['Łucja Żółć-Ěščřž', 'Владимир Ерёмин', '王小明', '김민준'])
    expect(text).toContain(name);
});

test('letters that no font has are boxes and said to be; signs that turn the writing around are left out', async () => {
  const report = await reportFor('Ada 𞤀𞤣 \u202Eexe.gpj');
  const text = (await readPdf(await pdfOf(report, 'A4'))).pages.join(' ');
  expect(text).toContain('Ada □□ exe.gpj');
  expect(text).toContain('stand as boxes');
  expect(reportHtml(report, 'A4')).toContain('𞤀𞤣');
});

test('what is written is text: no tag, no script, no address in the page', async () => {
  const html = reportHtml(await reportFor('<script>alert(1)</script>" onload="x'), 'A4');
  expect(html).not.toContain('<script');
  expect(html).not.toContain('onload="');
  expect(html).toContain('&lt;script&gt;');
});

test('a client with nothing: one page of unknowns, no table of zeros', async () => {
  const pdf = await readPdf(
    await pdfOf(await reportFor('Nobody Yet', aHistory({ plans: [], placements: [], rungs: [] })), 'A4'),
  );
  const [first = ''] = pdf.pages;
  for (const said of [
    'No plan is written.',
    'Nothing is open',
    'Nothing is known yet.',
    'No step is on record.',
    'none is recorded',
  ])
    expect(first).toContain(said);
  const rows = pdf.tables.flatMap((table) => table.rows);
  expect(rows.length).toBeLessThan(8);
});

test('a very long word is cut, not lost; a note of many lines goes on on the next page', async () => {
  const history = sampleHistory();
  const long = 'x'.repeat(300);
  const lines = Array.from({ length: 150 }, (_, line) => `line ${line}.`).join('\n');
  const content = contentOf(history, {
    record: {
      questions: [
        {
          id: 'q',
          askedAt: '2026-03-04T19:00:00.000Z',
          text: `${long}\n${lines}`,
          answeredAt: null,
          answeredBy: null,
          answer: null,
          stills: [],
        },
      ],
    },
  });
  const report = reportOf((await packedPeriod(content, WHOLE)).report);
  const pdf = await readPdf(await pdfOf(report, 'A4'));
  const text = pdf.pages.join(' ');
  expect(text.replace(/\s/g, '').split('x').length).toBeGreaterThan(600);
  expect(text).toContain('line 149.');
});
