// Steps that start, test and check share. Only Node's own modules: they run before anything is installed.
import { spawn, spawnSync } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
export const dataFolder = process.env.PLUMBLINE_DATA ?? join(root, '.data');

/** A refusal to start, told in plain words without a stack. */
export class PlainError extends Error {}

export function say(line) {
  process.stdout.write(`${line}\n`);
}

function filesBelow(path) {
  if (!existsSync(path)) return [];
  if (statSync(path).isFile()) return [path];
  return readdirSync(path)
    .filter((name) => name !== 'generated' && name !== 'node_modules')
    .sort()
    .flatMap((name) => filesBelow(join(path, name)));
}

export function hashOf(paths, extra = '') {
  const hash = createHash('sha256').update(extra);
  for (const file of paths.flatMap((path) => filesBelow(join(root, path))))
    hash.update(file).update(readFileSync(file));
  return hash.digest('hex');
}

/** Runs `work` unless the mark says it was finished for the same key; the mark is written after success only. */
export async function once(name, key, stillThere, work) {
  const mark = join(root, '.data', 'done', name);
  if (existsSync(mark) && readFileSync(mark, 'utf8') === key && stillThere()) return false;
  rmSync(mark, { force: true });
  await work();
  mkdirSync(dirname(mark), { recursive: true });
  writeFileSync(`${mark}.new`, key);
  renameSync(`${mark}.new`, mark);
  return true;
}

export function run(command, args, options = {}) {
  return new Promise((done, fail) => {
    const child = spawn(command, args, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'], ...options });
    let output = '';
    const keep = (chunk) => {
      output = (output + chunk).slice(-20_000);
    };
    child.stdout?.on('data', keep);
    child.stderr?.on('data', keep);
    child.on('error', fail);
    child.on('close', (code) =>
      code === 0 ? done(output) : fail(new PlainError(`${options.what ?? command} failed:\n${output}`)),
    );
  });
}

export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    throw new PlainError(`Node ${process.versions.node} is too old: install Node 20.19 or newer.`);
  }
}

export async function install() {
  const key = hashOf(['package-lock.json', '.npmrc'], process.version);
  const whole = () =>
    [
      '.package-lock.json',
      'next/package.json',
      'prisma/build/index.js',
      'pg/package.json',
      'tsx/package.json',
    ].every((file) => existsSync(join(root, 'node_modules', file)));
  await once('install', key, whole, async () => {
    say('Installing packages (about a minute)');
    const npm = process.env.npm_execpath;
    const args = ['ci', '--include=dev', '--no-audit', '--no-fund'];
    await (npm
      ? run(process.execPath, [npm, ...args], { what: 'npm ci' })
      : run('npm', args, { what: 'npm ci' }));
  });
  await once(
    'generate',
    hashOf(['prisma/schema', 'package-lock.json']),
    () => existsSync(join(root, 'lib/db/generated/client.ts')),
    () => run(process.execPath, ['lib/launch/generate.mjs'], { what: 'prisma generate' }),
  );
}

export async function build() {
  const key = hashOf([
    'app',
    'lib',
    'proxy.ts',
    'instrumentation.ts',
    'next.config.ts',
    'tsconfig.json',
    'package-lock.json',
    'prisma/schema',
  ]);
  await once(
    'build',
    key,
    () => existsSync(join(root, '.next/BUILD_ID')),
    async () => {
      say('Building the pages (about half a minute)');
      await run(process.execPath, ['node_modules/next/dist/bin/next', 'build'], {
        what: 'next build',
        env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
      });
    },
  );
}

/** Secrets of this checkout: made at the first start, kept in the data folder. */
export function secrets() {
  const file = join(dataFolder, 'secrets.json');
  mkdirSync(dataFolder, { recursive: true });
  if (!existsSync(file)) {
    const made = {
      app: randomBytes(48).toString('base64url'),
      database: randomBytes(24).toString('base64url'),
    };
    writeFileSync(`${file}.new`, JSON.stringify(made), { mode: 0o600 });
    renameSync(`${file}.new`, file);
  }
  return JSON.parse(readFileSync(file, 'utf8'));
}

export function which(names) {
  for (const name of names) {
    const found = spawnSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' });
    if (found.status === 0) return found.stdout.trim();
  }
  return undefined;
}
