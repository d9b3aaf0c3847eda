// npm test: everything it needs, then every test. Arguments choose parts: unit integration browser.
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build, checkNode, install, PlainError, root, say } from './steps.mjs';
import { findChromium, findRedis } from './tools.mjs';

const parts = process.argv.slice(2);
const wanted = (part) => parts.length === 0 || parts.includes(part);
const counts = { passed: 0, failed: 0, skipped: 0 };

function show(command, args, environment) {
  return new Promise((done) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: ['ignore', 'inherit', 'inherit'],
      env: environment,
    });
    child.on('close', (code) => done(code ?? 1));
  });
}

async function vitest(project, environment) {
  const report = join(root, '.data', `vitest-${project}.json`);
  rmSync(report, { force: true });
  const args = [
    'node_modules/vitest/vitest.mjs',
    'run',
    '--project',
    project,
    '--reporter=default',
    '--reporter=json',
  ];
  const code = await show(process.execPath, [...args, `--outputFile.json=${report}`], environment);
  try {
    const told = JSON.parse(readFileSync(report, 'utf8'));
    counts.passed += told.numPassedTests;
    counts.failed += told.numFailedTests;
    counts.skipped += told.numPendingTests;
  } catch {
    counts.failed += 1; // no report: the run itself broke
  }
  return code;
}

async function browser(environment) {
  const report = join(root, '.data', 'playwright.json');
  rmSync(report, { force: true });
  const args = [
    'node_modules/@playwright/test/cli.js',
    'test',
    '--config',
    'tests/browser/playwright.config.ts',
  ];
  const code = await show(process.execPath, args, { ...environment, PLAYWRIGHT_JSON_OUTPUT_FILE: report });
  try {
    const { stats } = JSON.parse(readFileSync(report, 'utf8'));
    counts.passed += stats.expected;
    counts.failed += stats.unexpected + stats.flaky;
    counts.skipped += stats.skipped;
  } catch {
    counts.failed += 1;
  }
  return code;
}

async function main() {
  checkNode();
  await install();
  mkdirSync(join(root, '.data'), { recursive: true });
  const environment = { ...process.env, NODE_ENV: 'test', NEXT_TELEMETRY_DISABLED: '1' };
  const codes = [];
  if (wanted('unit')) codes.push(await vitest('unit', environment));
  if (wanted('integration')) {
    const redis = process.env.REDIS_URL ? undefined : findRedis();
    if (!process.env.REDIS_URL && !redis)
      say('No Redis can be had here: the Redis half of the queue tests does not run.');
    codes.push(await vitest('integration', { ...environment, ...(redis ? { REDIS_SERVER: redis } : {}) }));
  }
  if (wanted('browser')) {
    const chromium = await findChromium();
    await build();
    codes.push(await browser({ ...environment, ...(chromium ? { CHROMIUM_PATH: chromium } : {}) }));
  }
  const skipped = counts.skipped ? `, ${counts.skipped} skipped` : '';
  say(`\nTests: ${counts.passed} passed, ${counts.failed} failed${skipped}`);
  process.exit(codes.some((code) => code !== 0) || counts.failed > 0 || counts.passed === 0 ? 1 : 0);
}

main().catch((error) => {
  process.stderr.write(error instanceof PlainError ? `${error.message}\n` : `${error.stack ?? error}\n`);
  process.exit(1);
});
