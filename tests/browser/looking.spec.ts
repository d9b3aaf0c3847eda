import { randomUUID } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, expect, type Locator, type Page, test } from '@playwright/test';
import { CELLS, drawnFilm, drawnJoints, FILM, knownPartOfHand } from '../fixtures/drawn-film.ts';
import { look } from './support/look.ts';
import { asOwner, demoFiles } from './support/own-team.ts';
import { asPhoneOf } from './support/phone.ts';
import { signedIn } from './support/signed-in.ts';

// A drawn figure on two films of one client whom no other file touches: stepped, drawn over, judged, answered, and a
// still of it whose centre of mass is known beforehand. What is not a press of a pointer is done by keys.
const NAME = 'Mei-Lin Tsao';
const FRAMES = 50;
const joints = (frame: number) => drawnJoints(2.5 * Math.sin(frame / 9), 3);

test.describe.configure({ mode: 'serial' });
let here: string;
let beside: string;
let page: Page;
const problems: string[] = [];

type Place = { team: string; client: string; rung: string; date: string; side: string };

/** Two films of the day of the newest check-in, as an upload would have left them. */
async function fill(): Promise<string[]> {
  const films = [await drawnFilm(FRAMES, joints), await drawnFilm(FRAMES, (frame) => joints(frame + 20))];
  return asOwner(async (db) => {
    const found = await db.query<Place>(
      `select k.team_id as team, k.client_id as client, s.rung_id as rung, k.date::text as date, s.side from check_in_set s
       join check_in k on k.team_id = s.team_id and k.id = s.check_in_id join client c on c.team_id = k.team_id and c.id = k.client_id
       join rung r on r.team_id = s.team_id and r.id = s.rung_id join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
       where c.name = $1 and s.value is not null and s.how <> 'not-done' and cardinality(l.faults) > 1
         and k.replaced_at is null and k.deleted_at is null order by k.date desc, s.idx limit 1`,
      [NAME],
    );
    const { team, client, rung, date, side } = found.rows[0] as Place;
    const ids = films.map(() => randomUUID());
    for (const [at, id] of ids.entries()) {
      const film = films[at] ?? Buffer.alloc(0);
      const key = `${team}/${id}.mp4`;
      mkdirSync(join(demoFiles(), team), { recursive: true });
      writeFileSync(join(demoFiles(), key), film);
      await db.query(
        `insert into clip (team_id, id, client_id, rung_id, side, angle, filmed_on, storage_key, content_type, bytes, state,
           seconds, fps, width, height, received_at)
         values ($1, $2, $3, $4, $5, 'from the side', $6, $7, 'video/mp4', $8, 'ready', $9, $10, $11, $12, now())`,
        [
          team,
          id,
          client,
          rung,
          side,
          date,
          key,
          film.byteLength,
          FRAMES / FILM.fps,
          FILM.fps,
          FILM.width,
          FILM.height,
        ],
      );
    }
    return ids;
  });
}

test.beforeAll(async ({ browser }) => {
  const [first = '', second = ''] = await fill();
  [here, beside] = [first, second];
  page = await coachPage(browser);
});
test.afterAll(async () => {
  await page.context().close();
  expect(problems).toEqual([]);
});

async function coachPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  const opened = await context.newPage();
  opened.on('pageerror', (error) => problems.push(error.message));
  return opened;
}

/** The number that the shown frame of a film carries. */
function frameOf(video: Locator): Promise<number> {
  return video.evaluate((film, { count, size, y }) => {
    const canvas = document.createElement('canvas');
    const { videoWidth, videoHeight } = film as HTMLVideoElement;
    [canvas.width, canvas.height] = [videoWidth, videoHeight];
    const pen = canvas.getContext('2d');
    pen?.drawImage(film as HTMLVideoElement, 0, 0);
    let number = 0;
    for (let bit = 0; bit < count; bit += 1) {
      const [red = 0] = pen?.getImageData(10 + bit * size + size / 2, y + size / 2, 1, 1).data ?? [];
      if (red > 128) number += 2 ** bit;
    }
    return number;
  }, CELLS);
}
const ready = (video: Locator) =>
  expect
    .poll(() => video.evaluate((film) => (film as HTMLVideoElement).readyState))
    .toBeGreaterThanOrEqual(2);
const film = () => page.locator('video').first();
const other = () => page.locator('video').nth(1);

async function pictured(of: Page, name: string, widths = [360, 1280]): Promise<void> {
  for (const width of widths) {
    await of.setViewportSize({ width, height: 900 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await of.emulateMedia({ colorScheme });
      await look(of, `${name}-${width}-${colorScheme}`);
    }
  }
  await of.emulateMedia({ colorScheme: 'light' });
}

test('steps frame by frame, never two, and plays as slowly as an eighth', async () => {
  await page.goto(`/clips/${here}`);
  await ready(film());
  await page.getByRole('application').first().focus();
  for (const [key, frame] of [
    ['.', 1],
    ['.', 2],
    ['ArrowRight', 3],
    [',', 2],
    ['Shift+ArrowRight', 12],
    ['ArrowLeft', 11],
  ] as const) {
    await page.keyboard.press(key);
    await expect.poll(() => frameOf(film()), { message: `after ${key}` }).toBe(frame);
  }
  await page.getByRole('button', { name: '1/8' }).press('Enter');
  await page.getByRole('application').first().focus();
  await page.keyboard.press('Space');
  await expect.poll(() => frameOf(film())).toBeGreaterThan(12);
  await page.keyboard.press('Space');
  expect(await film().evaluate((one) => (one as HTMLVideoElement).playbackRate)).toBe(0.125);
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible();
  // On from wherever it stopped, one frame at a time.
  const from = await frameOf(film());
  for (let step = 1; step <= 5; step += 1) {
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => frameOf(film())).toBe(from + step);
  }
});

test('draws a plumb line and an angle, by keys and by pointer', async () => {
  await page.getByRole('button', { name: 'Plumb line' }).press('Enter');
  await expect(page.getByText('hangs straight in the picture')).toBeVisible();
  await page.getByRole('button', { name: 'its top end' }).focus();
  for (let press = 0; press < 3; press += 1) await page.keyboard.press('Shift+ArrowRight');
  await expect(page.getByText(/leans \d+(\.\d)?° ± \d.*to the right in the picture/)).toBeVisible();
  await page.getByRole('button', { name: 'Hang the line straight' }).press('Enter');
  await page.getByRole('button', { name: 'Angle of three points' }).press('Enter');
  const angle = page.getByText(/^Angle: /).locator('output');
  await expect(angle).toHaveText(/^90° ± \d°$/);
  const handle = page.locator('circle[data-handle="angle other"]');
  const box = await handle.boundingBox();
  if (!box) throw new Error('no handle');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2, box.y + 120, { steps: 4 });
  await page.mouse.up();
  await expect(angle).not.toHaveText(/^90°/);
  await page.getByRole('button', { name: 'Two hands' }).press('Enter');
  const help = page.getByText(/^Two hands: /).locator('output');
  await expect(help).toHaveText(/^50 % ± \d+ % of the weight on the hand that helps$/);
  await page.getByRole('button', { name: 'hand that helps' }).focus();
  for (let press = 0; press < 5; press += 1) await page.keyboard.press('Shift+ArrowRight');
  await expect(help).toHaveText(/^[34]\d % ± /);
});

test('puts another film beside it, turned over and aligned, and steps both together', async () => {
  await page.getByLabel('Beside it').selectOption({ index: 1 });
  await ready(other());
  for (let step = 1; step <= 3; step += 1) {
    await page.getByRole('button', { name: 'Its frame on' }).press('Enter');
    await expect.poll(() => frameOf(other())).toBe(step);
  }
  await page.getByRole('button', { name: 'Turned over' }).press('Enter');
  await page.getByRole('button', { name: 'These two frames belong together' }).press('Enter');
  const from = await frameOf(film());
  for (let step = 1; step <= 4; step += 1) {
    await page.getByRole('button', { name: 'Frame on', exact: true }).press('Enter');
    await expect
      .poll(async () => [await frameOf(film()), await frameOf(other())])
      .toEqual([from + step, 3 + step]);
  }
  await pictured(page, 'looking', [1280]);
  await page.getByLabel('Beside it').selectOption({ index: 0 });
});

test('says what a set looks like, with its undo, and words at a moment', async () => {
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.getByRole('button', { name: 'Looked at, nothing to say' }).press('Enter');
  await expect(page.getByText(/^Looked at by /)).toBeVisible();
  await page.getByRole('button', { name: 'Let it wait again' }).press('Enter');
  await expect(page.getByRole('button', { name: 'Looked at, nothing to say' })).toBeVisible();
  await page.getByLabel('not clean').check();
  await page.getByRole('button', { name: 'Keep', exact: true }).press('Enter');
  await expect(page.getByText('name at least one fault that was seen')).toBeVisible();
  const fault = page.getByRole('group', { name: 'What is seen' }).getByRole('checkbox').first();
  await fault.focus();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Keep', exact: true }).press('Enter');
  const seen = page.getByRole('list', { name: 'Seen on this film' });
  await expect(seen.getByText(/not clean: /)).toBeVisible();
  await expect(page.getByText(/^Looked at by /)).toBeVisible();
  await seen.getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(seen).toHaveCount(0);
  await page.getByLabel('clean', { exact: true }).check();
  await page.getByRole('button', { name: 'Keep', exact: true }).press('Enter');
  await expect(seen.getByText(': clean', { exact: false })).toBeVisible();

  const moment = page.getByRole('slider', { name: 'Moment of the film' });
  await moment.focus();
  await page.keyboard.press('ArrowRight');
  await page.getByLabel(`To ${NAME}`, { exact: false }).fill('Push taller here.');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  const words = page.getByRole('list', { name: 'Words on this film' });
  await expect(words.getByText('Push taller here.')).toBeVisible();
  const at = await frameOf(film()); // said while the step was under way, of the frame it led to
  await page.getByRole('button', { name: 'Frame on', exact: true }).press('Enter');
  await expect.poll(() => frameOf(film())).toBe(at + 1);
  await words.getByRole('button', { name: /^To / }).press('Enter');
  await expect.poll(() => frameOf(film())).toBe(at);
  await pictured(page, 'looking-said');
});

test('a still of it, joints placed where they are known to be: the known centre of mass, within the stated error', async () => {
  await page.setViewportSize({ width: 1280, height: 900 });
  const frame = await frameOf(film());
  await page.getByRole('button', { name: 'Take this frame as a still' }).press('Enter');
  await page.waitForURL('**/stills/*');
  await expect(page.getByRole('link', { name: /^from the film of/ })).toBeVisible();
  const known = joints(frame);
  const picture = page.getByRole('img', { name: /points placed on it/ });
  const box = await picture.boundingBox();
  if (!box) throw new Error('no picture');
  const spots = [
    ['heel of the hand', known.heel],
    ['tip of the longest finger', known.fingertip],
    ['wrist', known.wrist],
    ['elbow', known.elbow],
    ['shoulder', known.shoulder],
    ['ear', known.ear],
    ['hip, at the bone on its side', known.hip],
    ['knee', known.knee],
    ['ankle, outside', known.ankle],
    ['ball of the foot', known.toe],
    ['top of the plumb line', { x: 40, y: 40 }],
    ['bottom of the plumb line', { x: 40, y: 600 }],
  ] as const;
  for (const [name, to] of spots) await place(name, to);
  const row = page.getByRole('row', { name: /^centre of mass over the hand/ });
  const [value = Number.NaN, error = Number.NaN] = (await row.getByRole('cell').allTextContents())
    .slice(0, 2)
    .map((cell) => Number(cell.replace(/[^\d.-]/g, '')));
  expect(Math.abs(value - knownPartOfHand(known) * 100)).toBeLessThanOrEqual(error);
  expect(error).toBeLessThan(25);
  await page.getByRole('button', { name: 'Keep this placing' }).press('Enter');
  await expect(page.getByText('Kept.')).toBeVisible();
  await pictured(page, 'still-of-film');
});

/** A point moved by its keys: by tens, then by ones. */
async function place(name: string, to: { x: number; y: number }): Promise<void> {
  const button = page.getByRole('button', { name: new RegExp(`^${name}`) });
  await button.focus();
  const [x = 0, y = 0] = ((await button.locator('span').textContent()) ?? '').split(', ').map(Number);
  for (const [by, plus, minus] of [
    [to.x - x, 'ArrowRight', 'ArrowLeft'],
    [to.y - y, 'ArrowDown', 'ArrowUp'],
  ] as const) {
    const key = by > 0 ? plus : minus;
    const steps = Math.round(Math.abs(by));
    for (let ten = 0; ten < Math.floor(steps / 10); ten += 1) await page.keyboard.press(`Shift+${key}`);
    for (let one = 0; one < steps % 10; one += 1) await page.keyboard.press(key);
  }
}

test('the client finds the words at their moment, and what was seen', async ({ browser }) => {
  const context = await browser.newContext({ viewport: { width: 360, height: 720 }, hasTouch: true });
  const phone = await context.newPage();
  phone.on('pageerror', (error) => problems.push(error.message));
  await asPhoneOf(phone, NAME);
  await phone.goto('/answers');
  await phone
    .getByRole('link', { name: /^On your film/ })
    .first()
    .click();
  await phone.waitForURL(`**/films/${here}`);
  const own = phone.locator('video');
  await phone.getByRole('button', { name: /^Go to / }).tap();
  await expect.poll(() => own.evaluate((one) => (one as HTMLVideoElement).currentTime)).toBeGreaterThan(0.2);
  await expect(phone.getByText('“Push taller here.”')).toBeVisible();
  await expect(
    phone.getByRole('region', { name: 'What was seen' }).getByText('clean', { exact: true }),
  ).toBeVisible();
  for (const colorScheme of ['light', 'dark'] as const) {
    await phone.emulateMedia({ colorScheme });
    await look(phone, `own-film-360-${colorScheme}`);
  }
  await phone.goto(`/films/${beside}`);
  await expect(phone.getByText(/has not looked yet/)).toBeVisible();
  await context.close();
});
