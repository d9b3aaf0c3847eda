import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { loadGapLibrary } from '#lib/db/gap-library.ts';
import { copyLibraryInto, leadOf } from '#tests/integration/clients/support.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { agreeTo, idOf, ladderNow, opened, place, plan, rungEdit, rungNamed } from './arrange.ts';

let team: TestTeam;
let lead: Actor;
let ladderId: string;
const rung = (key: string) => idOf(team, 'rung', key);

beforeAll(async () => {
  team = await makeTestTeam();
  lead = leadOf(team);
  await copyLibraryInto(team);
  ladderId = await idOf(team, 'ladder', 'PL');
});

const limit = (clientId: string, tissue: string) =>
  ownerQuery(
    `insert into limit_rule (team_id, client_id, tissue, rule, from_date, who) values ($1, $2, $3, 'none', '2026-11-20', 'coach')`,
    [team.teamId, clientId, tissue],
  );
async function assessed(clientId: string, ladderIds: string[], at: string): Promise<void> {
  await ownerQuery(
    `insert into assessment (team_id, client_id, by_id, skill_id, on_date, answers, created_at)
     select $1, $2, m.id, s.id, '2026-11-20', $3, $4 from member m, skill s
     where m.team_id = $1 and s.team_id = $1 order by s.position limit 1`,
    [team.teamId, clientId, JSON.stringify({ parts: ladderIds.map((id) => ({ ladderId: id })) }), at],
  );
}
const gapLadder = async () =>
  (await withTeamPg(team.scope, loadGapLibrary)).find((ladder) => ladder.id === ladderId);
const opening = (opens: string, needsAll: string[][], over: object = {}) => ({
  opens,
  needsAll,
  orOnSupports: [],
  under18CoachTick: false,
  words: 'The tuck opens with the lean.',
  ...over,
});

describe('openings', () => {
  it('are read with ids and kept so that the gap finder finds them as before', async () => {
    const [first, lean] = [await rung('PL.1'), await rung('LN.4')];
    const { ladder } = await opened(lead, ladderId);
    expect(ladder.openings).toMatchObject([{ opens: first, needsAll: [[lean]] }]);
    const before = await gapLadder();
    await agreeTo(lead, ladderId, {
      act: 'openings',
      openings: ladder.openings.map((one) => ({ ...one, words: `${one.words} ` })),
    });
    expect((await gapLadder())?.openings).toEqual(before?.openings);
  });

  it('may ask for rungs of the team’s own; whom that touches is said, and nothing kept before a yes', async () => {
    const [below, at, lastOf] = [await rung('PL.2'), await rung('PL.5'), await rung('LN.3')];
    const own = { act: 'add-rung', above: lastOf, ...(await leanLike()) };
    const lean = await idOf(team, 'ladder', 'LN');
    await agreeTo(lead, lean, own);
    const made = (await ladderNow(team, lean)).rungs.find((one) => one.name === 'Own lean');
    if (!made) throw new Error('no own rung');
    const [toMeet, past, found, earlier, gone] = await Promise.all(
      ['Asha', 'Bela', 'Cyra', 'Dara', 'Esra'].map((name) =>
        makeTestClient(team, { name, ...(name === 'Esra' ? { standing: 'left' } : {}) }),
      ),
    );
    if (!toMeet || !past || !found || !earlier || !gone) throw new Error('clients');
    await place(team, toMeet.clientId, { ladderId, rungId: below });
    await place(team, gone.clientId, { ladderId, rungId: below });
    await place(team, past.clientId, { ladderId, rungId: at });
    await assessed(found.clientId, [lean, ladderId], '2026-11-20T10:00:00Z');
    await assessed(earlier.clientId, [ladderId], '2026-11-19T10:00:00Z');
    await assessed(earlier.clientId, [lean], '2026-11-20T10:00:00Z');

    const { ladder, send } = await opened(lead, ladderId);
    const edit = {
      act: 'openings',
      openings: [...ladder.openings, opening(at, [[made.id]], { words: 'Opens with our own lean.' })],
    };
    const asked = await send(edit);
    expect(asked).toMatchObject({
      saved: false,
      touches: [
        {
          words: expect.stringMatching(/: opens with nothing asked → Own lean, Lean$/),
          clients: [{ name: 'Asha' }, { name: 'Cyra' }],
        },
      ],
    });
    expect((await ladderNow(team, ladderId)).openings).toEqual(ladder.openings);
    expect(await send(edit, asked.saved ? '' : asked.agree)).toEqual({ saved: true });
    const kept = (await gapLadder())?.openings.at(-1);
    expect(kept).toMatchObject({ opens: 'PL.5', needsAll: [[made.id]], words: 'Opens with our own lean.' });
    const library = await withTeamPg(team.scope, loadGapLibrary);
    expect(library.flatMap((one) => one.rungs).filter((one) => one.key === made.id)).toHaveLength(1);
    const [line] = await ownerQuery<{ fields: string[] }>(
      `select fields from audit where team_id = $1 and object_id = $2 order by at desc limit 1`,
      [team.teamId, ladderId],
    );
    expect(line?.fields).toEqual(['openings']);
  });

  it('are refused by field, and nothing is kept: nothing asked, no words, a stranger, a circle', async () => {
    const { ladder, send } = await opened(lead, ladderId);
    const [five, lean] = [await rung('PL.5'), await rung('LN.4')];
    const tell = (openings: object[]) =>
      send({ act: 'openings', openings }).catch((error: { fields: object }) => error.fields);
    const parsed = async (openings: object[]) => {
      try {
        return await send({ act: 'openings', openings });
      } catch (error) {
        return JSON.stringify(error);
      }
    };
    expect(await parsed([opening(five, [])])).toContain('asks for nothing');
    expect(await parsed([opening(five, [[lean]], { words: '' })])).toContain('say it in words');
    expect(await tell([opening(five, [[randomUUID()]])])).toEqual({
      'edit.openings.0.needsAll.0.0': expect.stringContaining('not a rung of your ladders'),
    });
    // The lean of 20 cm would wait for the tuck, which waits for that lean.
    const leanId = await idOf(team, 'ladder', 'LN');
    const other = await opened(lead, leanId);
    const circle = await other
      .send({ act: 'openings', openings: [opening(lean, [[await rung('PL.1')]])] })
      .catch((error: { fields: object }) => error.fields);
    expect(circle).toEqual({
      'edit.openings.0.needsAll.0.0': expect.stringContaining('neither would ever open'),
    });
    expect((await ladderNow(team, ladderId)).openings).toEqual(ladder.openings);
    expect((await ladderNow(team, leanId)).openings).toEqual(other.ladder.openings);
  });
});

async function leanLike() {
  const lean = await idOf(team, 'ladder', 'LN');
  const { ladder } = await opened(lead, lean);
  const { rung: fields, drill } = rungEdit(ladder, await rung('LN.3'), {
    rung: { name: 'Own lean' },
  }) as { rung: object; drill: object };
  return { rung: fields, drill };
}

describe('swaps', () => {
  it('follow a change of a drill, and whom that touches is said', async () => {
    const three = await rung('PL.3');
    const [limited, free] = [
      await makeTestClient(team, { name: 'Finn' }),
      await makeTestClient(team, { name: 'Gita' }),
    ];
    for (const { clientId } of [limited, free])
      await plan(team, clientId, { version: 1, from: '2026-11-01', rungIds: [three] });
    await limit(limited.clientId, 'wrist-back');
    const { ladder, send } = await opened(lead, ladderId);
    const before = rungNamed(ladder, three);
    expect(before.rung.swaps.some((one) => one.tissue === 'wrist-back')).toBe(true);
    const edit = rungEdit(ladder, three, { drillFor: 'this', drill: { equipment: ['rings'] } });
    const asked = await send(edit);
    if (asked.saved) throw new Error('should have asked');
    const swaps = asked.touches.filter((one) => one.words.includes('swaps to spare wrist bent back'));
    expect(swaps).toHaveLength(1);
    expect(swaps[0]?.words).toMatch(/^.*: swaps to spare wrist bent back: on parallel bars or on fists/);
    expect(swaps[0]?.clients.map((one) => one.name)).toEqual(['Finn']);
    expect(await ladderNow(team, ladderId)).toEqual(ladder);
    expect(await send(edit, asked.agree)).toEqual({ saved: true });
    const after = rungNamed(await ladderNow(team, ladderId), three);
    expect(after.rung.swaps.filter((one) => one.support !== null)).toEqual([]);
  });

  it('on another ladder of the part follow too, with a line in its audit; a coach’s own swap stays', async () => {
    // Two ladders of one part: all that spares one rung is on the other.
    const rows = await ownerQuery<{
      from: string;
      to: string;
      ladder: string;
      instead: string;
      tissue: string;
    }>(
      `select r.ladder_id as "from", i.ladder_id as "to", w.rung_id as ladder, w.instead_id as instead, w.tissue
       from swap w join rung r on r.team_id = w.team_id and r.id = w.rung_id
       join rung i on i.team_id = w.team_id and i.id = w.instead_id
       where w.team_id = $1 and i.ladder_id <> r.ladder_id order by r.key, w.tissue limit 1`,
      [team.teamId],
    );
    const [across] = rows;
    if (!across) throw new Error('no swap across ladders');
    const own = await opened(lead, across.from);
    const mine = { insteadId: across.ladder, tissue: across.tissue, support: 'soft-ground', why: 'mine' };
    const { rung: kept } = rungNamed(own.ladder, across.ladder);
    await agreeTo(lead, across.from, rungEdit(own.ladder, across.ladder, { swaps: [mine, ...kept.swaps] }));
    await agreeTo(lead, across.to, { act: 'retire-rung', rungId: across.instead });
    const after = rungNamed(await ladderNow(team, across.from), across.ladder).rung.swaps;
    expect(after.some((one) => one.insteadId === across.instead)).toBe(false);
    expect(after).toContainEqual(mine);
    const [line] = await ownerQuery<{ fields: string[] }>(
      `select fields from audit where team_id = $1 and object_id = $2 order by at desc limit 1`,
      [team.teamId, across.from],
    );
    expect(line?.fields.some((field) => field.startsWith('swaps of '))).toBe(true);
    await agreeTo(lead, across.to, { act: 'put-back-rung', rungId: across.instead });
    const back = rungNamed(await ladderNow(team, across.from), across.ladder).rung.swaps;
    expect(back.some((one) => one.insteadId === across.instead)).toBe(true);
  });

  it('changed by hand ask when a client under a limit is offered them', async () => {
    const seven = await rung('PL.7');
    const client = await makeTestClient(team, { name: 'Hani' });
    await plan(team, client.clientId, { version: 1, from: '2026-11-01', rungIds: [seven] });
    const without = await opened(lead, ladderId);
    const edit = rungEdit(without.ladder, seven, { swaps: [] });
    await limit(client.clientId, 'shoulder-forward');
    const asked = await without.send(edit);
    expect(asked).toMatchObject({ saved: false });
    const touches = asked.saved ? [] : asked.touches;
    expect(touches.every((one) => one.words.includes('swaps to spare') && one.words.endsWith('→ none'))).toBe(
      true,
    );
    expect(touches[0]?.clients.map((one) => one.name)).toEqual(['Hani']);
    expect(rungNamed(await ladderNow(team, ladderId), seven).rung.swaps.length).toBeGreaterThan(0);
    expect(await without.send(edit, asked.saved ? '' : asked.agree)).toEqual({ saved: true });
    expect(rungNamed(await ladderNow(team, ladderId), seven).rung.swaps).toEqual([]);
  });
});
