// npm run check: what CI looks at before the tests. Every step is shown, the first failure ends it.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkNode, install, root, say } from './steps.mjs';

const bin = (path) => join(root, 'node_modules', path);
const steps = [
  ['format and lint', [bin('@biomejs/biome/bin/biome'), 'check']],
  ['route types', [bin('next/dist/bin/next'), 'typegen']],
  ['types', [bin('typescript/bin/tsc'), '--noEmit']],
  ['types of the pure core', [bin('typescript/bin/tsc'), '-p', 'lib/tsconfig.core.json']],
  [
    'imports run one way',
    [
      bin('dependency-cruiser/bin/dependency-cruise.mjs'),
      '--config',
      'tests/architecture/boundaries.mjs',
      'app',
      'lib',
      'worker',
      'tests',
      'prisma',
      '--output-type',
      'err-long',
    ],
  ],
  ['no dead code', [bin('knip/bin/knip.js')]],
];

function show(name, args, environment = process.env) {
  say(`- ${name}`);
  const done = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit', env: environment });
  if (done.status !== 0) {
    say(`"${name}" failed.`);
    process.exit(done.status ?? 1);
  }
}

checkNode();
await install();
for (const [name, args] of steps) show(name, args);

const { startPostgres } = await import('./postgres.mjs');
const folder = mkdtempSync(join(tmpdir(), 'plumbline-check-'));
const server = process.env.DATABASE_URL
  ? undefined
  : await startPostgres({ folder, password: 'only-for-this-check' });
const url = process.env.DATABASE_URL ?? server.url('postgres');
try {
  show('migrations lead to the schema', ['lib/launch/migrate.mjs', '--check'], {
    ...process.env,
    DATABASE_URL: url,
  });
} finally {
  server?.remove();
  rmSync(folder, { recursive: true, force: true });
}
say('All checks passed.');
process.exit(0);
