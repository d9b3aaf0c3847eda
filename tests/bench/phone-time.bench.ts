import { existsSync } from 'node:fs';
import { type Browser, chromium, devices, type Page } from '@playwright/test';
import { type Bench, type BenchRow, medianOf } from './harness.ts';

/** A person: a second to find and press, a third of one for a key (own choice, on the slow side). */
const TAP_MS = 1_000;
const KEY_MS = 300;
/** Slow 4G as browser tools throttle it: 1.6 Mbit/s down, 750 kbit/s up, 150 ms there and back. */
const SLOW_4G = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 93_750 };
const SLOWER_CPU = 4;
const CLIENTS = 5;
const WORDS = 'Elbow fine today, hips turned on the third one. Slept badly.';
const SECOND = 1_000;

/** How long a person needs on a slow phone with slow signal; asks a running demo, so it is given its address. */
export const phoneTimeBench: Bench = {
  name: 'phone-time',
  what: 'a check-in by scripted people on a throttled phone; asks a running demo',
  missing: () =>
    process.env.PLUMBLINE_AT
      ? null
      : 'start the demo with `npm start` and give its address: PLUMBLINE_AT=http://localhost:3000',
  run: async () => {
    const at = process.env.PLUMBLINE_AT ?? '';
    const given = process.env.CHROMIUM_PATH;
    const browser = await chromium.launch({
      ...(given && existsSync(given) ? { executablePath: given } : {}),
      args: ['--disable-dev-shm-usage', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
    });
    try {
      const usual: number[] = [];
      const noted: number[] = [];
      for (let client = 0; client < CLIENTS; client += 1) {
        usual.push(await timed(browser, at, 2 * client, asPlanned));
        noted.push(await timed(browser, at, 2 * client + 1, withNotes));
      }
      return [row('phone-time', usual, '45 s'), row('phone-time-notes', noted, '120 s')];
    } finally {
      await browser.close();
    }
  },
};

function row(name: string, times: number[], must: string): BenchRow {
  return {
    name,
    value: medianOf(times) / SECOND,
    unit: 's from Today to saved, median',
    reference: null,
    ratio: null,
    better: 'lower',
    must,
    aim: must,
    sizes: `${times.length} people, slow 4G, ${SLOWER_CPU} x slower, slowest ${(Math.max(...times) / SECOND).toFixed(1)} s`,
  };
}

type Person = {
  tap: (name: RegExp, role?: 'button' | 'link') => Promise<void>;
  type: (text: string) => Promise<void>;
  page: Page;
};

async function timed(
  browser: Browser,
  at: string,
  client: number,
  fill: (person: Person) => Promise<void>,
): Promise<number> {
  const { defaultBrowserType: _, ...phone } = devices['Pixel 7'] ?? {};
  const context = await browser.newContext({ ...phone, viewport: { width: 360, height: 640 }, baseURL: at });
  const page = await context.newPage();
  await page.goto('/sign-in');
  const options = page.getByLabel('Client', { exact: true }).locator('option');
  const value = await options.nth(client % (await options.count())).getAttribute('value');
  await page.getByLabel('Client', { exact: true }).selectOption(value ?? '');
  await page.getByRole('button', { name: /Open the phone/ }).click();
  await page.getByRole('button', { name: 'Sign in on this phone' }).click();
  await page.waitForURL('**/today');
  const session = await context.newCDPSession(page);
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', SLOW_4G);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER_CPU });
  const person: Person = {
    page,
    tap: async (name, role = 'button') => {
      await page.waitForTimeout(TAP_MS);
      await page.getByRole(role, { name }).first().tap();
    },
    type: (text) => page.keyboard.type(text, { delay: KEY_MS }),
  };
  const from = performance.now();
  await fill(person);
  await page.getByRole('heading', { name: /^(Saved on this phone|Sent to)/ }).waitFor();
  const took = performance.now() - from;
  await context.close();
  return took;
}

async function asPlanned({ tap, page }: Person): Promise<void> {
  await tap(/^Check in/, 'link');
  await page
    .getByRole('button', { name: /as planned/ })
    .first()
    .waitFor();
  await tap(/^The rest as planned/);
  await tap(/^Next: how hard/);
  await tap(/^6/);
  await tap(/^Next/);
  await tap(/^Nothing hurts/);
  await tap(/^Send/);
}

/** A session that went otherwise: three sets typed, words, an elbow that hurts a little. */
async function withNotes({ tap, type, page }: Person): Promise<void> {
  await tap(/^Check in/, 'link');
  await page
    .getByRole('button', { name: /as planned/ })
    .first()
    .waitFor();
  for (const [set, value] of [
    [1, '5'],
    [2, '5'],
    [3, '4'],
  ] as const) {
    await tap(new RegExp(`, set ${set}: planned`));
    await page.waitForTimeout(TAP_MS);
    await page.locator('.stepper input').first().tap();
    await type(value);
    await page.keyboard.press('Enter');
  }
  await tap(/^The rest as planned/);
  await tap(/^Next: how hard/);
  await tap(/^8/);
  await tap(/^Add words/);
  await page.waitForTimeout(TAP_MS);
  await page.getByRole('textbox', { name: /words/i }).first().tap();
  await type(WORDS);
  await tap(/^Next/);
  await tap(/right elbow/);
  await tap(/^Next: right elbow/);
  await tap(/^Inner/);
  await tap(/^Joint or tendon/);
  await tap(/^2/);
  await tap(/^The usual/);
  await tap(/^Send/);
}
