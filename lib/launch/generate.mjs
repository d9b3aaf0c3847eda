// Makes the Prisma client. `prisma generate` asks for a native engine that it does not use: any executable satisfies it.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const run = spawnSync(process.execPath, [join('node_modules', 'prisma', 'build', 'index.js'), 'generate'], {
  env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1' },
  stdio: ['ignore', 'pipe', 'pipe'],
  encoding: 'utf8',
});
if (run.status !== 0) process.stderr.write(`${run.stdout}\n${run.stderr}\n`);
process.exit(run.status ?? 1);
