import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';

type Cruise = {
  summary: { totalCruised: number; violations: { rule: { name: string }; from: string }[] };
  modules: { source: string }[];
};

function cruise(...paths: string[]): Cruise {
  const args = [
    'node_modules/dependency-cruiser/bin/dependency-cruise.mjs',
    ...paths,
    '--output-type',
    'json',
  ];
  args.push('--config', 'tests/architecture/boundaries.mjs');
  try {
    return JSON.parse(
      execFileSync(process.execPath, args, {
        encoding: 'utf8',
        maxBuffer: 1e8,
        stdio: ['ignore', 'pipe', 'ignore'],
      }),
    );
  } catch (error) {
    // The tool ends with the number of violations as its code and still prints its report.
    return JSON.parse((error as { stdout: string }).stdout);
  }
}

function filesOfTheProduct(): string[] {
  const list = execFileSync(
    'git',
    ['ls-files', '--cached', '--others', '--exclude-standard', 'app', 'lib', 'worker'],
    { encoding: 'utf8' },
  );
  return list.split('\n').filter((file) => /\.(ts|tsx|mjs)$/.test(file) && !file.endsWith('.d.mts'));
}

describe('imports run one way', () => {
  const planted = 'lib/checks/planted-violation.ts';
  afterAll(() => rmSync(planted, { force: true }));

  it('reads every module of the product and finds no violation', () => {
    const found = cruise('app', 'lib', 'worker');
    const read = new Set(found.modules.map((module) => module.source));
    const files = filesOfTheProduct();
    expect(files.length).toBeGreaterThan(100);
    expect(files.filter((file) => !read.has(file))).toEqual([]);
    expect(found.summary.violations.map((violation) => `${violation.rule.name}: ${violation.from}`)).toEqual(
      [],
    );
  });

  it('reports a planted violation of every kind it can plant', () => {
    mkdirSync('lib/checks', { recursive: true });
    writeFileSync(
      planted,
      [
        "import { readFileSync } from 'node:fs';",
        "import { withTeam } from '#lib/db/client.ts';",
        "import { PrismaClient } from '#lib/db/generated/client.ts';",
        "import { Queue } from 'bullmq';",
        "import './not-there.ts';",
        'export const planted = [readFileSync, withTeam, PrismaClient, Queue];',
      ].join('\n'),
    );
    const names = new Set(cruise(planted).summary.violations.map((violation) => violation.rule.name));
    expect([...names].sort()).toEqual(
      expect.arrayContaining([
        'bullmq-only-at-the-edges',
        'core-is-pure',
        'prisma-only-in-lib-db',
        'resolves',
      ]),
    );
  });
});

describe('the lockfile', () => {
  const lock: { packages: Record<string, { version?: string; resolved?: string }> } = JSON.parse(
    readFileSync('package-lock.json', 'utf8'),
  );

  it('carries no download address', () => {
    expect(Object.values(lock.packages).filter((entry) => entry.resolved?.startsWith('http'))).toEqual([]);
  });

  // Floors: Next.js, React and sharp security advisories up to November 2026 (GitHub advisories GHSA-673q-mjm6-r5xr,
  // GHSA-rhh4-g77r-r9qj, CVE-2026-126187, CVE-2026-96889, CVE-2026-119347), as collected on 2026-11-25.
  const floors: [string, string][] = [
    ['next', '16.4.5'],
    ['react', '19.3.1'],
    ['react-dom', '19.3.1'],
    ['sharp', '0.35.5'],
  ];
  const parts = (version: string) => version.split('.').map((part) => Number.parseInt(part, 10));
  function atLeast(version: string, floor: string): boolean {
    const [have, need] = [parts(version), parts(floor)];
    for (let i = 0; i < 3; i += 1)
      if ((have[i] ?? 0) !== (need[i] ?? 0)) return (have[i] ?? 0) > (need[i] ?? 0);
    return true;
  }

  it.each(floors)('holds every copy of %s at %s or newer', (name, floor) => {
    const copies = Object.entries(lock.packages).filter(
      ([path]) => path === `node_modules/${name}` || path.endsWith(`/node_modules/${name}`),
    );
    if (name !== 'sharp') expect(copies.length).toBeGreaterThan(0);
    expect(copies.filter(([, entry]) => !atLeast(entry.version ?? '0', floor))).toEqual([]);
  });

  it('pins every direct dependency exactly', () => {
    const { dependencies, devDependencies } = JSON.parse(readFileSync('package.json', 'utf8'));
    const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(
      ([, version]) => !/^\d/.test(String(version)),
    );
    expect(loose).toEqual([]);
  });
});
