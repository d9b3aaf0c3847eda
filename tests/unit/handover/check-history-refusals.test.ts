import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readSettings } from '#lib/handover/read-settings.ts';
import { Unreadable } from '#lib/handover/unreadable.ts';
import { aCheckIn, aHistory, sets } from '#tests/fixtures/history-builders.ts';
import { runCheckHistory } from './check-history-run.ts';

const folder = mkdtempSync(join(tmpdir(), 'plumbline-refused-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const good = aHistory({ checkIns: [aCheckIn(0)] });
const line = (value: unknown) => `${JSON.stringify(value)}\n`;
const withCheckIn = (over: Parameters<typeof aCheckIn>[1]) =>
  line({ ...good, checkIns: [aCheckIn(0, over)] });
const settings = (text: string) => {
  const file = join(folder, `${Buffer.from(text).toString('hex')}.json`);
  writeFileSync(file, text);
  return file;
};

const LINES: [string, string, RegExp][] = [
  ['not JSON', 'not json\n', / is not JSON: .*jq -c/],
  ['NaN', line(good).replace('"minutes":60', '"minutes":NaN'), / is not JSON/],
  [
    'a number without end',
    line(good).replace('"minutes":60', '"minutes":1e999'),
    /checkIns\.0\.minutes: .*number/,
  ],
  [
    'text for a number',
    line(good).replace('"minutes":60', '"minutes":"60"'),
    /checkIns\.0\.minutes: .*number/,
  ],
  ['another version', line({ ...good, formatVersion: 2 }), / is not a history: formatVersion: must be 1/],
  ['an unknown zone', withCheckIn({ zone: 'Mars/Base' }), /checkIns\.0\.zone: .*Europe\/Lisbon/],
  ['a date that is none', withCheckIn({ date: '2026-02-30' }), /checkIns\.0\.date: .*write it as/],
  ['a date long ago', withCheckIn({ date: '0026-02-20' }), /checkIns\.0\.date: .*from 2000 on/],
  ['an instant without zone', withCheckIn({ sentAt: '2026-03-02T10:00' }), /checkIns\.0\.sentAt: .*UTC/],
  [
    'a set of no rung',
    withCheckIn({ sets: sets([5], { rungId: 'none' }) }),
    /checkIns\.0\.sets\.0\.rungId: names the rung "none", which is not in rungs/,
  ],
  ['a line of another object', '{"formatVersion":1}\n', / is not a history: .*client/],
  ['a list', '[]\n', / is not a history: \(the whole file\)/],
];

test('each bad line is told in one line of its own, by its number, its field and what to write', () => {
  const { code, told } = runCheckHistory(['--keep-going'], LINES.map(([, text]) => text).join(''));
  expect(code).toBe(2);
  const lines = told.trimEnd().split('\n');
  LINES.forEach(([name, , message], index) => {
    expect(lines[index], name).toMatch(message);
    expect(lines[index], name).toMatch(new RegExp(`^line ${index + 1} `));
  });
  expect(lines).toHaveLength(LINES.length);
});

test.each(['', '\n \r\n\n'])('no input or empty lines only: %j', (input) => {
  refused(runCheckHistory([], input), /^standard input holds no history/);
});

test('bytes that are not UTF-8', () => {
  refused(
    runCheckHistory([], Buffer.from(line({ ...good, client: { ...good.client, name: 'Zoë' } }), 'latin1')),
    /^line 1 is not UTF-8 text: save it/,
  );
});

test('a line over 64 MB, and the one after it is read when asked to go on', () => {
  const long = Buffer.concat([Buffer.alloc(64 * 1024 * 1024 + 1, 'x'), Buffer.from('\nnonsense\n')]);
  const { code, told } = runCheckHistory(['--keep-going'], long);
  expect(code).toBe(2);
  expect(told).toMatch(/^line 1 is longer than 64 MB.*\nline 2 is not JSON.*\n$/);
});

test.each<[string, string[], RegExp]>([
  ['no such file', ['nowhere.json'], /^nowhere\.json cannot be read: there is no such file/],
  ['a folder', [folder], /cannot be read: it is a folder/],
  ['no date', ['--as-of', '2026-02-30', 'x.json'], /^--as-of "2026-02-30" is not a date: write it as/],
  ['an unknown option', ['--quick'], /Unknown option '--quick'.*--help/],
  ['two formats', ['--json', '--table'], /choose one/],
])('%s in the arguments', (_name, args, message) => {
  refused(runCheckHistory(args, line(good)), message);
});

test.each<[string, string, RegExp]>([
  ['that are nowhere', 'none.json', /^--settings none\.json cannot be read/],
  ['not JSON', settings('{'), /^--settings .* is not JSON/],
  ['of an unknown threshold', settings('{"pain.nothing":1}'), /no threshold "pain\.nothing"/],
  ['of text', settings('{"painHigh.from":"6"}'), /painHigh\.from must be a number/],
  ['under 0', settings('{"painHigh.from":-1}'), /painHigh\.from must be a number, 0 or more/],
  ['in a list', settings('[1]'), /must be an object such as/],
])('settings %s are refused', (_name, file, message) => {
  expect(() => readSettings(file)).toThrow(Unreadable);
  expect(() => readSettings(file)).toThrow(message);
});

test('refused settings end the command with 2', () => {
  refused(runCheckHistory(['--settings', settings('[1]')], line(good)), /must be an object such as/);
});

function refused({ code, told }: ReturnType<typeof runCheckHistory>, message: RegExp): void {
  expect(told).toMatch(message);
  expect(told.trimEnd().split('\n')).toHaveLength(1);
  expect(told).not.toMatch(/ {2}at /);
  expect(code).toBe(2);
}
