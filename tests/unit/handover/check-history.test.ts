import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { afterAll, describe, expect, it } from 'vitest';
import { findingJsonSchema } from '#lib/handover/finding-json-schema.ts';
import { aCheckIn, aHistory, aPain, threeAWeek } from '#tests/fixtures/history-builders.ts';
import { rowsIn, runCheckHistory } from './check-history-run.ts';

const folder = mkdtempSync(join(tmpdir(), 'plumbline-history-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const calm = aHistory({ checkIns: threeAWeek(2, (days) => aCheckIn(days, { sets: [] })) });
const nothing = aHistory({ checkIns: [] });
const hurt = aHistory({ checkIns: [aCheckIn(0, { sets: [] }), aCheckIn(2, { sets: [], pain: [aPain(7)] })] });
const line = (value: unknown) => `${JSON.stringify(value)}\n`;

function fileOf(name: string, value: unknown): string {
  const file = join(folder, name);
  writeFileSync(file, typeof value === 'string' ? value : JSON.stringify(value));
  return file;
}

describe('check-history', () => {
  it('writes the findings of a file as JSON Lines and ends with 1', () => {
    const { code, out, told } = runCheckHistory([fileOf('hurt.json', hurt)]);
    expect([code, told]).toEqual([1, '']);
    expect(rowsIn(out)).toContainEqual(
      expect.objectContaining({ kind: 'pain-high', tier: 'now', date: '2026-03-04', client: 'client-1' }),
    );
  });

  it('ends with 0 and writes nothing when nothing was found', () => {
    expect(runCheckHistory([fileOf('nothing.json', nothing)])).toEqual({ code: 0, out: '', told: '' });
  });

  it('writes one array with --json, also an empty one, each element as the schema says', () => {
    const { code, out } = runCheckHistory(['--json'], line(hurt) + line(calm) + line(hurt));
    const ajv = new Ajv2020({ strict: true, strictTypes: false, allErrors: true });
    addFormats.default(ajv);
    const validate = ajv.compile(JSON.parse(readFileSync('lib/handover/finding.schema.json', 'utf8')));
    const rows: unknown[] = JSON.parse(out);
    expect(code).toBe(1);
    expect(rows.length).toBeGreaterThan(1);
    for (const row of rows) expect(validate(row), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ ...(rows[0] as object), more: 1 })).toBe(false);
    expect(runCheckHistory(['--json'], line(nothing)).out).toBe('[]\n');
  });

  it('publishes the schema of a finding made from the code', () => {
    const published: unknown = JSON.parse(readFileSync('lib/handover/finding.schema.json', 'utf8'));
    expect(published).toEqual(JSON.parse(JSON.stringify(findingJsonSchema())));
  });

  it('reads many on standard input, a line each, and lays the table in columns', () => {
    const other = { ...hurt, client: { ...hurt.client, id: 'b\u001b[31m' } };
    const { code, out } = runCheckHistory(['--table'], `${line(calm)}\n${line(hurt)}${line(other)}`);
    expect(code).toBe(1);
    expect(out).toMatch(/^date {8}client/);
    expect(out).toMatch(/2026-03-04 {2}client-1 .*now .*pain-high/);
    expect(out).not.toContain('\u001b');
    const kinds = out.split('\n').filter((row) => row.includes('pain-high'));
    expect(new Set(kinds.map((row) => row.indexOf('pain-high'))).size).toBe(1);
  });

  it('takes a byte order mark, Windows line ends and no newline at the end', () => {
    const { code, told } = runCheckHistory(
      [],
      `\uFEFF${JSON.stringify(hurt)}\r\n\r\n${JSON.stringify(calm)}`,
    );
    expect([code, told]).toEqual([1, '']);
  });

  it('stops at the first bad line; with --keep-going tells it, reads on and still ends with 2', () => {
    const input = `${line(hurt)}nonsense\n${line(hurt)}`;
    const stopped = runCheckHistory([], input);
    const went = runCheckHistory(['--keep-going', '--json'], input);
    const pains = (rows: Record<string, unknown>[]) => rows.filter((row) => row.kind === 'pain-high').length;
    expect([stopped.code, pains(rowsIn(stopped.out))]).toEqual([2, 1]);
    expect([went.code, pains(JSON.parse(went.out))]).toEqual([2, 2]);
    expect(went.told).toMatch(/^line 2 is not JSON: .*\n$/);
    expect(JSON.parse(runCheckHistory(['--json'], input).out)).toHaveLength(rowsIn(stopped.out).length);
  });

  it('ends quietly when the reader has enough', () => {
    const input = fileOf('many.jsonl', line(hurt).repeat(3_000));
    const command = `"${process.execPath}" --import tsx lib/handover/check-history.ts < "${input}" | head -n 1`;
    const done = spawnSync('sh', ['-c', command], { encoding: 'utf8' });
    expect(done.stderr).toBe('');
    expect(rowsIn(done.stdout)).toHaveLength(1);
  });

  it('tells a reason once, on its first evening, with --every-night', () => {
    const { out } = runCheckHistory(['--every-night', '--as-of', '2026-03-10', fileOf('hurt.json', hurt)]);
    expect(rowsIn(out).filter((row) => row.kind === 'pain-high')).toHaveLength(1);
  });

  it('looks from the evening asked for, with the thresholds of a file', () => {
    const early = runCheckHistory(['--as-of', '2026-03-03', fileOf('hurt.json', hurt)]);
    expect(rowsIn(early.out).filter((row) => row.kind === 'pain-high')).toEqual([]);
    const raised = fileOf('raised.json', { 'painHigh.from': 8 });
    const { code, out } = runCheckHistory(['--settings', raised, fileOf('hurt.json', hurt)]);
    expect(code).not.toBe(2);
    expect(rowsIn(out).filter((row) => row.kind === 'pain-high')).toEqual([]);
  });
});
