import { createRequire } from 'node:module';
import { Script } from 'node:vm';
import { expect } from 'vitest';
import type { TestBundle } from './bundle.ts';

const require = createRequire(import.meta.url);
/** Loops of a mutant that go on longer than any true one: the mutant counts as seen. */
const MOST_TICKS = 3_000_000;
const MOST_MILLISECONDS = 60_000;
/** Run as a script of its own, as only a script can be stopped when it never ends. */
const ENDS = new Script('globalThis.currentTest()');

type Test = { name: string; run: () => unknown };

/** Runs a test file with one mutant awake (0: none). The first failure, or null when every test passes. */
export async function runBundle(bundle: TestBundle, mutant: number): Promise<string | null> {
  let ticks = 0;
  Object.assign(globalThis, {
    mutant,
    tick: () => {
      ticks += 1;
      if (ticks > MOST_TICKS) throw new Error('does not end');
    },
  });
  const tests: Test[] = [];
  const after: (() => unknown)[] = [];
  try {
    const main = bundle.script.runInThisContext();
    const loaded = { exports: {} };
    main(
      (name: string) => (name === 'vitest' ? collector(tests, after) : require(name)),
      loaded,
      loaded.exports,
    );
    if (tests.length === 0) throw new Error(`${bundle.file} registered no test`);
    for (const test of tests) {
      ticks = 0;
      Object.assign(globalThis, { currentTest: test.run });
      await ENDS.runInThisContext({ timeout: MOST_MILLISECONDS });
    }
    for (const one of after) await one();
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** What a test file asks of vitest, kept as a list to run in order. */
function collector(tests: Test[], after: (() => unknown)[]) {
  const each =
    (add: (name: string, run: (...values: unknown[]) => unknown) => void) =>
    (rows: readonly unknown[]) =>
    (name: string, run: (...values: unknown[]) => unknown) => {
      for (const row of rows) add(name, () => run(...(Array.isArray(row) ? row : [row])));
    };
  const add = (name: string, second: unknown, third?: unknown) => {
    const run = typeof second === 'function' ? second : third;
    if (typeof run !== 'function') throw new Error(`${name}: a test without a body`);
    tests.push({ name, run: () => run() });
  };
  const describe = (_: string, run: () => void) => run();
  const it = Object.assign(add, { each: each(add) });
  return {
    describe: Object.assign(describe, { each: each((_, run) => run()) }),
    it,
    test: it,
    expect,
    afterAll: (run: () => unknown) => after.push(run),
  };
}
