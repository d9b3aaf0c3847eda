import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, type Page } from '@playwright/test';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

type Violation = { id: string; nodes: { target: unknown; failureSummary?: string }[] };

/** What a theme can change: everything else axe asks is the same in both. */
const COLOURS = ['color-contrast', 'link-in-text-block'];

/** No violation of WCAG 2.2 AA that axe can find, on the page or on what `about` selects of it. */
export async function expectAccessible(page: Page, about = 'html', onlyColours = false): Promise<void> {
  const there = await page.evaluate(() => 'axe' in window);
  if (!there) await page.evaluate(source);
  const violations = await page.evaluate(
    async ([where, tags, rules]) => {
      const axe = (
        window as unknown as {
          axe: { run: (where: unknown, options: unknown) => Promise<{ violations: Violation[] }> };
        }
      ).axe;
      // Of what is well, axe need not write down where it is.
      const runOnly = rules ? { type: 'rule', values: rules } : { type: 'tag', values: tags };
      return (await axe.run(where, { runOnly, resultTypes: ['violations'] })).violations;
    },
    [about, STANDARDS, onlyColours ? COLOURS : null] as const,
  );
  expect(
    violations.map(({ id, nodes }) => ({
      id,
      where: nodes.slice(0, 4).map((node) => [node.target, node.failureSummary]),
    })),
  ).toEqual([]);
}
