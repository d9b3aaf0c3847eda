import { beforeAll, describe, expect, test } from 'vitest';
import { type Opened, packOf } from '#tests/fixtures/open-pack.ts';
import { WHOLE } from '#tests/fixtures/pack-content.ts';
import { type ReadPdf, readPdf } from '#tests/fixtures/read-pdf.ts';
import { demoContent } from './demo-pack.ts';

let pack: Opened;
let pdf: ReadPdf;
let report = '';

beforeAll(async () => {
  const words = {
    why: 'What load on the right elbow, since when?',
    forWhom: 'physiotherapist Siobhán Reilly',
    summary: null,
    next: 'One more month at this load. I would change my mind at a score of 4.',
    manner: 'Short sentences, English, twice a week. Promised: an answer about the club.',
  };
  pack = await packOf(demoContent(), { ...WHOLE, words });
  pdf = await readPdf(pack.bytes('data/report.pdf'));
  report = pdf.elements
    .filter((one) => !['LI', 'LBody', 'Lbl', 'TR', 'TD', 'TH', 'Caption'].includes(one.role))
    .map((one) => one.text)
    .join('\n');
}, 60_000);

const table = (caption: string) => pdf.tables.find((one) => one.caption.includes(caption));

describe('a physiotherapist, from the pack alone', () => {
  test('1. where exactly, which side, since which day, and what had changed in the three weeks before', () => {
    expect(table('Joint or tendon pain, 0-10')?.rows[0]?.slice(0, 2)).toEqual([
      'right elbow, inner',
      expect.stringMatching(/^\d+ \w{3} 2026$/),
    ]);
    expect(report).toMatch(/In the 21 days before it was first told: .*(plan version|on )/);
  });
  test('2. worst during, after, next morning, by date; rising or not; how many days are unknown', () => {
    const days = table('Right elbow, inner, by day');
    expect(days?.head).toEqual(['Date', 'During', 'After', 'Next morning', 'On a day without training']);
    expect(days?.rows.length).toBeGreaterThan(3);
    expect(report).toMatch(/Median of the last 28 days \d+(\.\d)?, (up from|down from|the same as)/);
    expect(report).toMatch(/In the last 84 days \d+ have a check-in and \d+ have none/);
  });
  test('3. the load on this tissue by week, in sets, seconds and hard positions', () => {
    const work = table('Work by week: elbow, bending side');
    expect(work?.head).toEqual([
      'Week to',
      'Left sets',
      'hard',
      'seconds',
      'BW s',
      'Right sets',
      'hard',
      'seconds',
      'BW s',
    ]);
    expect(work?.rows.length).toBeGreaterThan(20);
    expect(pack.rows('tissue_by_week').length).toBeGreaterThan(100);
  });
  test('4. which positions provoke and which do not', () => {
    const drills = table('Drills that load it');
    expect(drills?.rows.length).toBeGreaterThan(2);
    expect(drills?.head).toEqual(expect.arrayContaining(['Stress 0-1', 'Median score', 'Highest']));
    expect(Object.keys(pack.rows('rungs')[0] ?? {})).toContain('stress_elbow_bending_0_1');
  });
  test('5. danger signs: that they were asked, how often, what was answered', () => {
    const told = pack.rows('danger_signs').length;
    const asked = pack.rows('check_ins').length;
    expect(report).toContain(
      `${asked} check-ins in the period; ${told === 0 ? 'no sign was told' : `${told} sign`}`,
    );
    for (const word of ['numbness or tingling', 'weakness', 'at night', 'swelling', 'a fall or a pop'])
      expect(report).toContain(word);
  });
  test('6. what was tried, when, and what happened after', () => {
    expect(table('Steps taken')?.rows[0]).toEqual([
      '15 Aug 2026',
      'Less volume',
      'pain rising',
      'Pulling at half',
      'the same after 14 days, better after 28 days',
    ]);
  });
  test('7. left against right: strength, range, faults, and how sure', () => {
    expect(report).toContain('Left against right');
    const pairs = table('Same-day pairs');
    if (pairs) expect(pairs.head).toContain('How sure');
    expect(report).toContain('a side without a number was not measured');
  });
  test('8. what the goal asks of the joint: share of body weight, seconds, the next rung', () => {
    const asked = table('What the goal asks');
    expect(asked?.head).toEqual([
      'Rung',
      'Pass mark',
      'Share of body weight on the hands',
      'Highest stress by tissue, 0-1',
    ]);
    expect(asked?.rows.some(([rung]) => rung?.startsWith('Next: '))).toBe(true);
  });
  test('9. which limits stand, from whom, until when, and how to send one back', () => {
    const limits = pack.rows('limits');
    if (limits.length > 0)
      expect(table('Limits')?.head).toEqual(['What holds', 'From', 'Last day', 'Said by', 'In their words']);
    else expect(report).toContain('Limits: none was ever set');
    expect(report).toContain('To set a limit of your own, send the coach in writing');
  });
  test('10. other load and health, and whether the client agreed to this being seen', () => {
    const told = table('Told at the start')?.rows.map((row) => row.join(': ')) ?? [];
    expect(told).toContain('health: no surgery, no medicines; left wrist broken at 19');
    expect(told).toContain('training: daily; gymnastics club twice a week besides');
    expect(report).toContain('ask about other sports and work');
    expect(report).toMatch(/handing the record on: given 28 May 2026/);
    expect(pack.text('data/consent.txt')).toContain('Text version 1, as it was shown:');
  });
});

describe('a new coach, from the pack alone', () => {
  test('1. in two sentences: who, what they want, why', () => {
    expect(pdf.pages[0]).toMatch(/Haruto Kinoshita works for this: /);
    expect(pdf.pages[0]).toContain('Computed from the findings; no coach has written a summary.');
  });
  test('2. the plan today, since when, and why these drills', () => {
    expect(pdf.pages[0]).toMatch(/Version \d+, from \d+ \w+ 2026, .*sessions a week\. Why: /);
    expect(table('Plan versions')?.head).toContain('Why');
    expect(pack.text('data/plan.ics')).toContain('SUMMARY:Training A');
  });
  test('3. which rung on each ladder and side, how long, how far to the pass, seen on film or not', () => {
    expect(table('Where the client stands')?.head).toEqual([
      'Ladder',
      'Side',
      'Rung',
      'Since',
      'Days on it',
      'Pass mark',
      'Share of the pass mark',
      'Seen on film',
    ]);
    expect(table('Where the client stands')?.rows.length).toBeGreaterThan(2);
  });
  test('4. what is open: questions, films, promises, the end of the plan, limits', () => {
    expect(pdf.pages[0]).toContain('The plan ends on Sun 29 Nov');
    expect(pdf.pages[0]).toContain('May I train on bars while travelling?');
    expect(report).toContain('Promised: an answer about the club.');
  });
  test('5. what hurts or used to, and what is never done', () => {
    expect(table('Joint or tendon pain, 0-10')?.rows.length).toBeGreaterThan(0);
    expect(report).toContain('Limits and clinicians’ words');
    expect(pdf.pages[0]).toContain('stop that work and see a licensed clinician');
  });
  test('6. what was tried and did not work', () => {
    expect(pdf.pages[0]).toMatch(
      /less volume, for pain rising .*the same after 14 days, better after 28 days/,
    );
    expect(table('Reasons')?.rows.some((row) => row[4]?.includes('right to tell'))).toBe(true);
  });
  test('7. how they like to be spoken to, how often, language, zone, answering days', () => {
    expect(report).toContain('Short sentences, English, twice a week.');
    expect(report).toContain('Zone Asia/Tokyo.');
  });
  test('8. kit, ground, minutes, days, other training, coming absences', () => {
    expect(table('Told at the start')?.rows).toContainEqual(['kit', 'rings, hard floor, wall']);
    expect(report).toMatch(/Ground in check-ins, with counts: /);
    expect(report).toMatch(/A usual session takes \d+ minutes/);
    expect(report).toMatch(/Days away/);
  });
  test('9. how honest the log is: days known, as planned, late, corrected', () => {
    expect(table('The log')?.rows.map(([what]) => what)).toEqual([
      'Days with a check-in',
      'Days between two near check-ins, taken as rest',
      'Days unknown or away',
      'Sets kept as planned with one tap',
      'Check-ins that came 2 days late or more',
      'Check-ins corrected later',
      'Check-ins taken back',
    ]);
  });
  test('10. what comes next, and what would change the mind', () => {
    expect(report).toContain('I would change my mind at a score of 4.');
    expect(
      pdf.elements.some((one) =>
        one.text.includes('Write the next plan. It would clear when: a plan after the last day'),
      ),
    ).toBe(true);
  });
});
