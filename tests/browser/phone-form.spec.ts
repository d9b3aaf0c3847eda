import { expect, type Page, test } from '@playwright/test';
import { asPhoneOf, picturedOnPhone } from './support/phone.ts';

// What a thumb does on the check-in beside the usual: timers, the same again, a drill that was not planned, pain on a day
// without training, the morning after, and taking an entry back. On the demo team; what is sent here is deleted here.
/** One of the demo; other tests hold other phones. */
const NAME = 'Anahit Vardanyan';

test.use({ viewport: { width: 360, height: 640 }, hasTouch: true });

test.beforeEach(async ({ page }) => {
  await asPhoneOf(page, NAME);
});

/** An entry of yesterday, as a phone sends it. */
async function sendYesterday(page: Page): Promise<void> {
  const status = await page.evaluate(async () => {
    const at = new Date(Date.now() - 86_400_000);
    const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
    const pain = { region: 'elbow-inner', side: 'right', moment: 'after', value: 4, kind: 'joint' };
    const body = {
      id: crypto.randomUUID(),
      date: new Intl.DateTimeFormat('en-CA', { timeZone: zone }).format(at),
      zone,
      kind: 'training',
      effort: 5,
      minutes: 30,
      pain: [pain],
      words: 'only a test',
    };
    const headers = { 'content-type': 'application/json' };
    return (await fetch('/api/check-ins', { method: 'POST', headers, body: JSON.stringify(body) })).status;
  });
  expect(status).toBe(201);
}

async function deleteNewest(page: Page): Promise<void> {
  await page.goto('/earlier');
  const before = await page.getByText(/^Deleted /).count();
  await page
    .getByRole('button', { name: /^Delete it: / })
    .first()
    .click();
  await picturedOnPhone(page, 'earlier-asks');
  await page.getByRole('button', { name: 'Delete it', exact: true }).click();
  await expect(page.getByText(/^Deleted /)).toHaveCount(before + 1);
}

test('a hold is timed, the next set is the same, rest runs, a drill is added', async ({ page }) => {
  await page.goto('/check-in');
  const cells = page.locator('.drill').first().locator('.set-cell[aria-expanded]');
  await cells.first().click();
  await page.getByRole('button', { name: '3 s first' }).click();
  const timer = page.getByRole('button', { name: /^Time it/ });
  const size = await timer.boundingBox();
  expect(size?.height).toBeGreaterThanOrEqual(56);
  await timer.click();
  await expect(page.getByRole('button', { name: 'Stop 1 s' })).toBeVisible();
  await page.getByRole('button', { name: /^Stop \d/ }).click();
  await expect(cells.first()).toHaveAccessibleName(/set 1: [12] of \d+ s/);
  await expect(page.getByText(/^Rest 1:5/)).toBeVisible();
  await page
    .getByRole('button', { name: /same as last: [12] s/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'One more set' }).first().click();
  await picturedOnPhone(page, 'check-in-timers');
  await page.getByRole('button', { name: 'Skip' }).click();
  await expect(page.getByText(/^Rest /)).toHaveCount(0);

  const add = page.getByRole('region', { name: 'Add a drill' });
  await add.getByRole('button', { name: /not planned/ }).click();
  await picturedOnPhone(page, 'check-in-add-drill');
  const choice = add.getByRole('listitem').first().getByRole('button');
  const title = (await choice.locator('span').textContent()) ?? '';
  await choice.click();
  const added = page.getByRole('region', { name: title, exact: true });
  await expect(added.getByText('not planned').first()).toBeVisible();
  await picturedOnPhone(page, 'check-in-drill-added');
  await page.reload(); // saved on the phone like everything else
  await added.getByRole('button', { name: 'Take this drill out' }).click();
  await expect(added).toHaveCount(0);
});

test('it hurts today: where at once, the caution tells the truth, and it can be taken back', async ({
  page,
}) => {
  await page.getByRole('link', { name: 'It hurts today' }).click();
  await expect(page.getByRole('heading', { name: 'Where does it hurt?' })).toBeVisible();
  await expect(page.locator('[aria-pressed=true]')).toHaveCount(0);
  await picturedOnPhone(page, 'it-hurts');
  await page.getByRole('button', { name: 'right elbow' }).click();
  await page.getByRole('button', { name: /^Next: right elbow/ }).click();
  await page.getByRole('button', { name: 'Inner' }).click();
  await page.getByRole('button', { name: 'Joint or tendon' }).click();
  await page
    .getByRole('group', { name: /^Worst today/ })
    .getByRole('button', { name: '7', exact: true })
    .click();
  await expect(page.getByText(/is told as soon as it is sent/)).toBeVisible();
  await page.getByRole('button', { name: /^Send to/ }).click();
  await expect(page.getByText(/has been told\./)).toBeVisible();
  await picturedOnPhone(page, 'it-hurts-sent');
  await deleteNewest(page);
});

test('the morning after pain is asked by one tap, nothing chosen beforehand', async ({ page }) => {
  await sendYesterday(page);
  await page.goto('/today');
  const morning = page.getByRole('link', { name: /How is it this morning/ });
  await expect(morning).toBeVisible();
  await picturedOnPhone(page, 'today-morning');
  await morning.click();
  await expect(page.locator('[aria-pressed=true]')).toHaveCount(0);
  await expect(page.getByRole('button', { name: /^Send to/ })).toBeDisabled();
  await picturedOnPhone(page, 'morning-asks');
  await page
    .getByRole('group', { name: /this morning/ })
    .getByRole('button', { name: '2', exact: true })
    .click();
  await page.getByRole('button', { name: 'Next: more about it' }).click();
  await page.getByRole('button', { name: /^Send to/ }).click();
  await expect(page.getByRole('heading', { name: /^Sent to/ })).toBeVisible();
  await page.goto('/today');
  await expect(page.getByRole('link', { name: 'Check in', exact: true })).toBeVisible();
  await expect(morning).toHaveCount(0);
  await deleteNewest(page);
  await deleteNewest(page);
});
