import { beforeAll, describe, expect, it } from 'vitest';
import { POST as make } from '#app/api/clients/[clientId]/links/route.ts';
import { POST as open } from '#app/api/handover/open/route.ts';
import { POST as download } from '#app/api/handover/pack/route.ts';
import { endLink } from '#lib/usecases/handover/end-link.ts';
import { loadLinks } from '#lib/usecases/handover/load-links.ts';
import { type MadeLink, makeLink } from '#lib/usecases/handover/make-link.ts';
import { openLink } from '#lib/usecases/handover/open-link.ts';
import { askErasureOf } from '#lib/usecases/rights/ask-erasure.ts';
import { withdrawConsent } from '#lib/usecases/rights/withdraw-consent.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { anotherPhone, aPhone, aTraining, NOW, type Phone } from '../check-in/arrange.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';
import { browserRequest, cookieFor, noParams } from '../support/signing-in.ts';
import { leadOf, type MemberActor } from '../team/arrange.ts';

const DAY = 86_400_000;
const WORDS = 'Left elbow felt fine on the wedge.';
const ASK = {
  forWhom: 'Dr Amara Lindqvist',
  why: 'Asked by the client for Thursday.',
  days: 7,
  period: 'all',
  summary: 'Look at the <right> elbow.',
  withPack: false,
  parts: [],
} as const;
let phone: Phone;
let lead: MemberActor;
beforeAll(async () => {
  phone = await aPhone('Nadja Hollar');
  lead = leadOf(phone.team);
  await submitCheckIn(phone.actor, aTraining(phone, { words: WORDS }), NOW);
});

const link = (changes: Partial<typeof ASK> | object = {}, at = new Date(), clientId = phone.clientId) =>
  makeLink(lead, { clientId, ask: { ...ASK, ...changes, parts: [] } }, at);
const tokenOf = ({ url }: MadeLink) => url.split('/').at(-1) ?? '';
const press = (token: string, code: string, route = open) =>
  route(browserRequest('/api/handover/open', { form: { token, code } }), noParams);
const wrong = ({ code }: MadeLink) => (code === '000000' ? '000001' : '000000');
const stateOf = async (made: MadeLink, at = new Date(), clientId = phone.clientId) =>
  (await loadLinks(lead, clientId, at))?.links.find(({ id }) => id === made.linkId);
const audit = (made: MadeLink) =>
  ownerQuery<{ action: string; fields: string[]; address: string | null; role: string }>(
    `select action, fields, from_address as address, actor_role as role from audit where object_id = $1 order by at, id`,
    [made.linkId],
  );

describe('a link that ends', () => {
  it('shows the report to whoever has the code, and nothing else: no session, no cache, no index', async () => {
    const made = await link();
    expect(made.code).toMatch(/^\d{6}$/);
    const answer = await press(tokenOf(made), `${made.code.slice(0, 3)} ${made.code.slice(3)}`);
    const html = await answer.text();
    expect(answer.status).toBe(200);
    expect(html).toContain('Nadja Hollar');
    expect(html).toContain('For Dr Amara Lindqvist');
    expect(html).toContain('Look at the &lt;right&gt; elbow.');
    expect(html).toContain('<meta name="robots" content="noindex">');
    expect(html).not.toContain('Download the pack');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(answer.headers.getSetCookie()).toEqual([]);
    expect(await stateOf(made)).toMatchObject({ end: null, openings: 1, wrongCodes: 0 });
  });

  it('keeps neither its token nor its code, and writes down each opening without an address', async () => {
    const made = await link();
    await press(tokenOf(made), made.code);
    await press(tokenOf(made), made.code);
    await press(tokenOf(made), wrong(made));
    const [row] = await ownerQuery<{ row: string }>(
      'select l::text as row from handover_link l where id = $1',
      [made.linkId],
    );
    expect(row?.row).not.toContain(tokenOf(made));
    expect(row?.row).not.toContain(made.code);
    const opened = { action: 'link-opened', fields: ['report'], address: null, role: 'system' };
    expect(await audit(made)).toEqual([
      { action: 'link-made', fields: [], address: null, role: 'lead' },
      opened,
      opened,
      { ...opened, action: 'link-code-wrong', fields: [] },
    ]);
  });

  it('is closed after five codes that do not fit, however many press at once, and the right one comes too late', async () => {
    const made = await link();
    const answers = await Promise.all(Array.from({ length: 30 }, () => press(tokenOf(made), wrong(made))));
    expect(answers.filter(({ status }) => status === 400)).toHaveLength(4);
    expect(answers.filter(({ status }) => status === 404)).toHaveLength(26);
    expect((await press(tokenOf(made), made.code)).status).toBe(404);
    expect(await stateOf(made)).toMatchObject({ end: 'codes', wrongCodes: 5, openings: 0 });
    expect((await audit(made)).filter(({ action }) => action === 'link-code-wrong')).toHaveLength(5);
  });

  it('says how many tries are left and asks again', async () => {
    const made = await link();
    const html = await (await press(tokenOf(made), wrong(made))).text();
    expect(html).toContain('The code does not fit: 4 tries are left');
    expect(html).toContain(`name="token" value="${tokenOf(made)}"`);
    expect(await (await press(tokenOf(made), '12')).text()).toContain('has six digits');
    expect(await stateOf(made)).toMatchObject({ wrongCodes: 1 });
  });

  it('answers alike when over, ended, closed or never made', async () => {
    const over = await link({ days: 1 }, new Date(Date.now() - DAY - 1000));
    const ended = await link();
    await endLink(lead, { clientId: phone.clientId, linkId: ended.linkId }, new Date());
    const answers = await Promise.all([
      press(tokenOf(over), over.code),
      press(tokenOf(ended), ended.code),
      press('a'.repeat(32), '123456'),
    ]);
    const texts = await Promise.all(answers.map((answer) => answer.text()));
    expect(answers.map(({ status }) => status)).toEqual([404, 404, 404]);
    expect(new Set(texts).size).toBe(1);
    expect(await stateOf(over)).toMatchObject({ end: 'over' });
    expect(await stateOf(ended)).toMatchObject({ end: 'ended' });
  });

  it('lives as many days as was said, to the second', async () => {
    const at = new Date('2026-11-24T19:00:00.000Z');
    const made = await link({ days: 30 }, at);
    const asked = { token: tokenOf(made), code: made.code };
    await expect(openLink(asked, new Date(at.getTime() + 30 * DAY - 1))).resolves.toBeDefined();
    await expect(openLink(asked, new Date(at.getTime() + 30 * DAY))).rejects.toMatchObject({
      code: 'not-found',
    });
  });

  it('gives the pack only where it was ticked', async () => {
    const plain = await link();
    expect((await press(tokenOf(plain), plain.code, download)).status).toBe(403);
    const ask = { ...ASK, withPack: true, parts: ['history' as const] };
    const made = await makeLink(lead, { clientId: phone.clientId, ask }, new Date());
    const html = await (await press(tokenOf(made), made.code)).text();
    expect(html).toContain('Download the pack');
    const answer = await press(tokenOf(made), made.code, download);
    const bytes = Buffer.from(await answer.arrayBuffer());
    expect(answer.headers.get('content-type')).toBe('application/zip');
    expect(bytes.subarray(0, 2).toString()).toBe('PK');
    expect(bytes.includes('data/record.json')).toBe(true);
    expect((await audit(made)).map(({ fields }) => fields)).toEqual([['history'], ['report'], ['pack']]);
  });

  it('shows nothing written after it was made', async () => {
    const { actor, clientId } = await anotherPhone(phone.team, 'Later Words');
    const other = { ...phone, actor, clientId };
    const before = new Date(Date.now() - 2 * DAY);
    const made = await link({}, before, clientId);
    await submitCheckIn(
      actor,
      aTraining(other, { date: new Date().toISOString().slice(0, 10), words: 'today' }),
      new Date(),
    );
    const { html } = await openLink({ token: tokenOf(made), code: made.code }, new Date());
    expect(html).not.toContain('>today<');
    expect(html).toContain('check-ins on 0 of 1 days');
  });
});

describe('links of a client', () => {
  it('end at once when consent is taken back, for good, and no new one is made', async () => {
    const { actor, clientId } = await anotherPhone(phone.team, 'Takes Back');
    const made = await link({}, new Date(), clientId);
    await withdrawConsent(actor, new Date());
    expect((await press(tokenOf(made), made.code)).status).toBe(404);
    await ownerQuery(
      `insert into consent (team_id, client_id, kind, text_version, given_at, given_by) values ($1, $2, 'health-data', '1', now(), 'again')`,
      [phone.team.teamId, clientId],
    );
    expect((await press(tokenOf(made), made.code)).status).toBe(404);
    expect(await stateOf(made, new Date(), clientId)).toMatchObject({ end: 'consent' });
    await ownerQuery('delete from consent where client_id = $1 and withdrawn_at is null', [clientId]);
    await expect(link({}, new Date(), clientId)).rejects.toMatchObject({ code: 'conflict' });
  });

  it('end when deletion is asked for, and are gone with the client', async () => {
    const { clientId } = await anotherPhone(phone.team, 'Is Forgotten');
    const made = await link({}, new Date(), clientId);
    await askErasureOf(lead, { clientId, words: 'asked by mail' }, new Date());
    expect((await press(tokenOf(made), made.code)).status).toBe(404);
    expect(await stateOf(made, new Date(), clientId)).toMatchObject({ end: 'deletion' });
    await expect(link({}, new Date(), clientId)).rejects.toMatchObject({ code: 'conflict' });
    await ownerQuery(
      `with set_team as (select set_config('app.team_id', $1::text, true))
       select erase_client($2::uuid, 'AAAAA-AAAAA-AAAAA-AAAAB', 'lead', now(), now()) from set_team`,
      [phone.team.teamId, clientId],
    );
    expect(await ownerQuery('select id from handover_link where id = $1', [made.linkId])).toEqual([]);
    expect((await press(tokenOf(made), made.code)).status).toBe(404);
  });

  it('are made, seen and ended in their own team only', async () => {
    const made = await link();
    const stranger = leadOf(await makeTestTeam('Other'));
    await expect(
      endLink(stranger, { clientId: phone.clientId, linkId: made.linkId }, new Date()),
    ).rejects.toMatchObject({ code: 'not-found' });
    await expect(
      makeLink(stranger, { clientId: phone.clientId, ask: { ...ASK, parts: [] } }, new Date()),
    ).rejects.toMatchObject({ code: 'not-found' });
    expect(await loadLinks(stranger, phone.clientId, new Date())).toBeUndefined();
    expect(await stateOf(made)).toMatchObject({ end: null });
  });

  it('are refused with every field that has to change', async () => {
    const cookie = await cookieFor(phone.team.userId);
    const context = { params: Promise.resolve({ clientId: phone.clientId }) };
    const json = { ...ASK, forWhom: ' ', why: '', days: '31', period: 'ever', parts: ['notes'] };
    const answer = await make(browserRequest('/x', { cookie, json }), context);
    const { error } = (await answer.json()) as { error: { fields: Record<string, string> } };
    expect(answer.status).toBe(400);
    expect(Object.keys(error.fields).sort()).toEqual(['days', 'forWhom', 'parts.0', 'period', 'why']);
  });
});
