import { readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { Script } from 'node:vm';
import { build } from 'esbuild';
import { type Mutant, mutate } from './mutate.ts';

const ROOT = resolve(import.meta.dirname, '../..');

/** A test file with all its sources, compiled once and run anew for each mutant. */
export type TestBundle = { file: string; script: Script; sources: Set<string> };

/** Test files bundled over sources in which every mutant sleeps. */
export async function bundleTests(
  testFiles: readonly string[],
): Promise<{ bundles: TestBundle[]; mutants: Mutant[] }> {
  const mutants: Mutant[] = [];
  const written = new Map<string, string>();
  const withMutants = (path: string): string => {
    const known = written.get(path);
    if (known !== undefined) return known;
    const file = relative(ROOT, path);
    const made = mutate(file, readFileSync(path, 'utf8'), mutants.length + 1);
    mutants.push(...made.mutants);
    written.set(path, made.code);
    return made.code;
  };
  const bundles: TestBundle[] = [];
  for (const file of testFiles) {
    const result = await build({
      entryPoints: [resolve(ROOT, file)],
      absWorkingDir: ROOT,
      bundle: true,
      write: false,
      metafile: true,
      format: 'cjs',
      platform: 'node',
      packages: 'external',
      logLevel: 'error',
      plugins: [
        {
          name: 'sleeping-mutants',
          setup: (plugin) => {
            plugin.onResolve({ filter: /^#(lib|tests|app|worker)\// }, ({ path }) => ({
              path: resolve(ROOT, path.slice(1)),
            }));
            plugin.onLoad({ filter: /\/lib\/checks\/.*\.ts$/ }, ({ path }) => ({
              contents: path.endsWith('/compare.ts') ? readFileSync(path, 'utf8') : withMutants(path),
              loader: 'ts',
            }));
          },
        },
      ],
    });
    const [output] = result.outputFiles;
    if (!output) throw new Error(`${file}: nothing was built`);
    bundles.push({
      file,
      script: new Script(`(function (require, module, exports) {${output.text}\n})`, { filename: file }),
      sources: new Set(Object.keys(result.metafile.inputs)),
    });
  }
  return { bundles, mutants };
}
