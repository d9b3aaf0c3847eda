import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { aCheckIn, aHistory, aPain, threeAWeek } from '#tests/fixtures/history-builders.ts';

const folder = mkdtempSync(join(tmpdir(), 'plumbline-history-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const calm = aHistory({ checkIns: threeAWeek(2, (days) => aCheckIn(days, { sets: [] })) });
const hurt = aHistory({ checkIns: [aCheckIn(0, { sets: [] }), aCheckIn(2, { sets: [], pain: [aPain(7)] })] });

function check(args: string[], input = '') {
  const command = ['--import', 'tsx', 'lib/handover/check-history.ts', ...args];
  const done = spawnSync(process.execPath, command, { input, encoding: 'utf8' });
  return { code: done.status, out: done.stdout, told: done.stderr };
}
function fileOf(name: string, value: unknown): string {
  const file = join(folder, name);
  writeFileSync(file, typeof value === 'string' ? value : JSON.stringify(value));
  return file;
}

describe('check-history', () => {
  it('writes the findings of a file as JSON and ends with 1', () => {
    const { code, out } = check([fileOf('hurt.json', hurt)]);
    expect(code).toBe(1);
    const rows = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(rows).toContainEqual(
      expect.objectContaining({ kind: 'pain-high', tier: 'now', date: '2026-03-04' }),
    );
  });
  it('reads many on standard input, a line each, and writes a table when asked', () => {
    const { code, out } = check(['--table'], `${JSON.stringify(calm)}\n\n${JSON.stringify(hurt)}\n`);
    expect(code).toBe(1);
    expect(out).toMatch(/2026-03-04 {2}client-1 .*now .*pain-high/);
  });
  it('tells a reason once, on its first evening, with --every-night', () => {
    const { out } = check(['--every-night', '--as-of', '2026-03-10', fileOf('hurt.json', hurt)]);
    expect(
      out
        .trim()
        .split('\n')
        .filter((line) => line.includes('"pain-high"')),
    ).toHaveLength(1);
  });
  it.each([
    [['--as-of', '2026-02-30', 'x.json'], '', /--as-of "2026-02-30" is not a date/],
    [[], '{"formatVersion":1}\n', /^line 1 is not a history: .*client/],
    [[], `${JSON.stringify(calm)}\nnot json\n`, /^line 2 is not JSON/],
    [['nowhere.json'], '', /nowhere.json cannot be read/],
  ])('ends with 2 and says what is wrong: %j', (args, input, message) => {
    const { code, told } = check(args, input);
    expect(code).toBe(2);
    expect(told).toMatch(message);
    expect(told).not.toMatch(/\n\s+at /);
  });
  it('takes thresholds from a file and refuses unknown ones', () => {
    const unknown = check(['--settings', fileOf('s.json', { 'pain.nothing': 1 }), fileOf('hurt.json', hurt)]);
    expect(unknown.code).toBe(2);
    expect(unknown.told).toContain('there is no threshold "pain.nothing"');
  });
});
