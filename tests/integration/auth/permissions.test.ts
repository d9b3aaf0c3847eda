import { randomUUID } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { may, PERMISSIONS, type Permission, ROUTES } from '#lib/auth/permissions.ts';
import { ROLES, type Role } from '#lib/domain/vocabulary.ts';
import type { RouteHandler } from '#lib/edge/define-route.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { browserRequest, cookieFor } from '../support/signing-in.ts';

type Kind = 'page.tsx' | 'route.ts';
type Found = { file: string; path: string; kind: Kind };

const found: Found[] = readdirSync('app', { recursive: true, encoding: 'utf8' })
  .filter((file) => /(^|\/)(page\.tsx|route\.ts)$/.test(file))
  .map((file) => {
    const folders = file.split('/').slice(0, -1);
    const path = `/${folders.filter((folder) => !folder.startsWith('(')).join('/')}`;
    return {
      file: join(process.cwd(), 'app', file),
      path,
      kind: file.endsWith('page.tsx') ? 'page.tsx' : 'route.ts',
    };
  });
const rowOf = (path: string) => ROUTES.find((row) => row.path === path);
const METHODS = ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE'];

type Handlers = Record<string, RouteHandler | undefined>;
type Case = { path: string; method: string; permission: Permission; handler: RouteHandler };

async function cases(): Promise<Case[]> {
  const list: Case[] = [];
  for (const { file, path, kind } of found) {
    if (kind === 'page.tsx') continue;
    const handlers = (await import(file)) as Handlers;
    for (const [method, permission] of Object.entries(rowOf(path)?.allows ?? {})) {
      const handler = handlers[method];
      if (handler) list.push({ path, method, permission, handler });
    }
  }
  return list;
}

type Person = { name: string; cookie: string | undefined; role: Role | undefined };
let team: TestTeam;
let clientId: string;
let people: Person[];
let stranger: string;

async function addMember(role: Role): Promise<string> {
  const userId = randomUUID();
  await ownerQuery(`insert into "user" (id, name, email) values ($1, $2, $3)`, [
    userId,
    role,
    `${userId}@test.example`,
  ]);
  await ownerQuery(
    `insert into member (team_id, user_id, role, name, email, zone) values ($1, $2, $3, $3, $4, 'Europe/Berlin')`,
    [team.teamId, userId, role, `${userId}@test.example`],
  );
  return userId;
}

async function addGuardian(): Promise<string> {
  const userId = randomUUID();
  await ownerQuery(`insert into "user" (id, name, email) values ($1, 'Guardian', $2)`, [
    userId,
    `${userId}@test.example`,
  ]);
  await ownerQuery(
    `insert into guardian (team_id, client_id, user_id, name) values ($1, $2, $3, 'Guardian')`,
    [team.teamId, clientId, userId],
  );
  return userId;
}

beforeAll(async () => {
  team = await makeTestTeam('Ours');
  const client = await makeTestClient(team, { name: 'Seeded name of a client' });
  clientId = client.clientId;
  const other = await makeTestClient(team, { name: 'Other client' });
  people = [
    { name: 'signed out', cookie: undefined, role: undefined },
    { name: 'client', cookie: await cookieFor(client.userId), role: 'client' },
    { name: 'other client', cookie: await cookieFor(other.userId), role: 'client' },
    { name: 'guardian', cookie: await cookieFor(await addGuardian()), role: 'guardian' },
    { name: 'assistant', cookie: await cookieFor(await addMember('assistant')), role: 'assistant' },
    { name: 'coach', cookie: await cookieFor(await addMember('coach')), role: 'coach' },
    { name: 'lead', cookie: await cookieFor(team.userId), role: 'lead' },
  ];
  stranger = await cookieFor((await makeTestTeam('Theirs')).userId);
});

const MISSING_ID = randomUUID();
/** Bodies that are right, so that only the walls can refuse. A new route with a client in its address needs one. */
const RIGHT_BODY: Record<string, unknown> = {
  'POST /api/clients/[clientId]/erasure': { sure: 'yes', words: 'Asked by letter.' },
  'POST /api/clients/[clientId]/erasure/take-back': {},
  'POST /api/clients/[clientId]/check-ins/[checkInId]/seen': {},
  'POST /api/clients/[clientId]/check-ins/[checkInId]/words': { set: null, text: 'Words.' },
  'POST /api/clients/[clientId]/clinician-word': { date: '2026-01-05', words: 'May do everything.' },
  'POST /api/clients/[clientId]/films': {
    rungId: MISSING_ID,
    side: 'both',
    angle: 'from the side',
    byDate: null,
    words: '',
  },
  'POST /api/clients/[clientId]/link': {},
  'POST /api/clients/[clientId]/notes': { text: 'A note.' },
  'POST /api/clients/[clientId]/standing': { standing: 'paused' },
  'POST /api/clients/[clientId]/standing/undo': { changeId: MISSING_ID },
};

function call(
  test: Case,
  cookie: string | undefined,
  of: string,
  headers: Record<string, string> = {},
  body: unknown = { 'not-a-field': clientId },
): Promise<Response> {
  const params: Record<string, string> = {};
  const path = test.path.replaceAll(/\[(?:\.\.\.)?(\w+)\]/g, (_, name: string) => {
    params[name] = name === 'clientId' ? of : MISSING_ID;
    return params[name];
  });
  const request = browserRequest(path, {
    method: test.method,
    ...(cookie ? { cookie } : {}),
    ...(test.method === 'GET' || test.method === 'HEAD' ? {} : { json: body }),
    headers,
  });
  return test.handler(request, { params: Promise.resolve(params) });
}

/** Only these are asked by people who are not signed in; each new one is a decision. */
const OPEN = [
  'GET /api/receipts/[receipt]',
  'GET /livez',
  'GET /manifest.webmanifest',
  'GET /metrics',
  'GET /readyz',
  'GET /sw.js',
  'POST /api/auth/sign-in/email',
  'POST /api/demo-phone',
  'POST /api/handover/open',
  'POST /api/handover/pack',
  'POST /api/join',
  'POST /api/join/team',
  'POST /api/sign-in',
  'POST /api/sign-in-link',
  'POST /api/sign-out',
  'page /guardian/[token]',
  'page /handover/[token]',
  'page /join/[token]',
  'page /join/closed',
  'page /join/team/[token]',
  'page /receipt/[receipt]',
  'page /sign-in',
  'page /without-signal',
];

describe('the table of who may do what', () => {
  it('has a row for every page and route, and none for what is not there', () => {
    expect(found.length).toBeGreaterThan(10);
    expect(found.filter(({ path }) => !rowOf(path)).map(({ path }) => path)).toEqual([]);
    expect(
      ROUTES.filter(({ path }) => !found.some((one) => one.path === path)).map(({ path }) => path),
    ).toEqual([]);
  });

  it('is in order, without doubles', () => {
    const paths = ROUTES.map(({ path }) => path);
    expect(paths).toEqual([...new Set(paths)].sort());
  });

  it('opens only what was decided to be open', () => {
    const open = ROUTES.flatMap(({ path, allows }) =>
      Object.entries(allows).flatMap(([what, permission]) =>
        permission === 'open' ? [`${what} ${path}`] : [],
      ),
    );
    expect(open.filter((one) => !OPEN.includes(one))).toEqual([]);
  });

  it('names the methods that each route exports', async () => {
    for (const { file, path, kind } of found) {
      const row = rowOf(path);
      if (!row) continue;
      if (kind === 'page.tsx') expect(Object.keys(row.allows), path).toEqual(['page']);
      else {
        const exported = Object.keys((await import(file)) as object).filter((name) => METHODS.includes(name));
        expect(Object.keys(row.allows).sort(), path).toEqual(exported.sort());
      }
    }
  });

  it('is asked by every page itself, with the permission of its row', () => {
    for (const { file, path, kind } of found) {
      const allows = rowOf(path)?.allows;
      if (kind !== 'page.tsx' || !allows || !('page' in allows) || allows.page === 'open') continue;
      expect(readFileSync(file, 'utf8'), path).toContain(`requireActor('${allows.page}')`);
    }
  });

  it('leaves no door beside it: no server actions', () => {
    const files = readdirSync('app', { recursive: true, encoding: 'utf8' }).filter((file) =>
      /\.tsx?$/.test(file),
    );
    expect(
      files.filter((file) => /^\s*['"]use server['"]/m.test(readFileSync(join('app', file), 'utf8'))),
    ).toEqual([]);
  });

  it('has a meaning for every permission and knows every role', () => {
    for (const [name, { roles, meaning }] of Object.entries(PERMISSIONS)) {
      expect(meaning.length, name).toBeGreaterThan(10);
      expect(
        roles.filter((role) => !ROLES.includes(role)),
        name,
      ).toEqual([]);
    }
  });
});

describe('every route', () => {
  it('answers each role as the table says', async () => {
    const wrong: string[] = [];
    for (const test of await cases()) {
      if (test.permission === 'open') continue;
      for (const person of people) {
        const { status } = await call(test, person.cookie, clientId);
        const allowed = person.role !== undefined && may(person.role, test.permission);
        const fits = !person.role
          ? status === 401
          : allowed
            ? ![401, 403].includes(status) && status < 500
            : status === 403;
        if (!fits) wrong.push(`${test.method} ${test.path} as ${person.name}: ${status}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('answers a coach of another team as if the client did not exist', async () => {
    const wrong: string[] = [];
    for (const test of await cases()) {
      if (!test.path.includes('[clientId]')) continue;
      const right = RIGHT_BODY[`${test.method} ${test.path}`];
      const [theirs, nobody] = [
        await call(test, stranger, clientId, {}, right),
        await call(test, stranger, MISSING_ID, {}, right),
      ];
      const [one, two] = [await theirs.text(), await nobody.text()];
      if (theirs.status !== nobody.status || one !== two)
        wrong.push(`${test.method} ${test.path}: ${one} / ${two}`);
      if ((test.method === 'GET' || right !== undefined) && theirs.status !== 404)
        wrong.push(`${test.method} ${test.path}: ${theirs.status}`);
      if (one.includes('Seeded name')) wrong.push(`${test.method} ${test.path} gives a name away`);
    }
    expect(wrong).toEqual([]);
    const [row] = await ownerQuery<{ standing: string }>('select standing from client where id = $1', [
      clientId,
    ]);
    expect(row?.standing).toBe('in-training');
  });

  it('that changes something refuses a foreign, a null and a missing origin', async () => {
    const wrong: string[] = [];
    for (const test of await cases()) {
      if (test.method === 'GET' || test.method === 'HEAD') continue;
      for (const origin of ['https://elsewhere.example', 'null', '']) {
        const { status } = await call(test, people.at(-1)?.cookie, clientId, { origin });
        if (status !== 403) wrong.push(`${test.method} ${test.path} from "${origin}": ${status}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('lets no cache keep what it answers', async () => {
    for (const test of await cases()) {
      if (test.permission === 'open') continue;
      const answer = await call(test, people.at(-1)?.cookie, clientId);
      expect(answer.headers.get('cache-control'), test.path).toContain('no-store');
    }
  });
});
