import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import {
  findOutline,
  insertPart,
  insertSkill,
  lockOutline,
  type Outline,
  type OutlineRow,
  renamePart,
  renameSkill,
  setPositions,
  setRetired,
} from '#lib/db/library-outline.ts';
import { AppError } from '#lib/errors.ts';
import type { OutlineChange } from '#lib/schemas/outline.ts';

type Of<Act> = Extract<OutlineChange, { act: Act }>;

/** Adds, renames, orders and retires skills and parts, and orders ladders, for the whole team. */
export async function editOutline(actor: Actor, change: OutlineChange, now: Date): Promise<void> {
  await withTeamPg(actor.scope, async (tx) => {
    await lockOutline(tx);
    const outline = await findOutline(tx);
    const done = await doChange(tx, { outline, change, now });
    await insertAudit(tx, actor, { action: 'outline-changed', ...done });
  });
}

type Task<Change> = { outline: Outline; change: Change; now: Date };
type Done = { objectId: string; fields: string[] };

async function doChange(tx: TeamPg, { outline, change, now }: Task<OutlineChange>): Promise<Done> {
  switch (change.act) {
    case 'add-skill':
      return addSkill(tx, { outline, change, now });
    case 'add-part':
      return addPart(tx, { outline, change, now });
    case 'rename':
      return rename(tx, { outline, change, now });
    case 'retire':
    case 'put-back':
      return retire(tx, { outline, change, now });
    case 'order':
      return order(tx, { outline, change, now });
  }
}

async function addSkill(tx: TeamPg, { outline, change }: Task<Of<'add-skill'>>): Promise<Done> {
  assertFree(outline.skills, change.name);
  const position = after(outline.skills);
  return { objectId: await insertSkill(tx, { name: change.name, position }), fields: ['new skill'] };
}

async function addPart(tx: TeamPg, { outline, change }: Task<Of<'add-part'>>): Promise<Done> {
  const { skillId, name } = change;
  if (!outline.skills.some((skill) => skill.id === skillId))
    throw wrong('skillId', 'is not a skill of this team: choose one from the list');
  const parts = outline.parts.filter((part) => part.skillId === skillId);
  assertFree(parts, name);
  return {
    objectId: await insertPart(tx, { skillId, name, position: after(parts) }),
    fields: ['new part'],
  };
}

async function rename(tx: TeamPg, { outline, change }: Task<Of<'rename'>>): Promise<Done> {
  const { shelf, id, was, name } = change;
  const row = rowOf(outline, shelf, id);
  if (row.name !== was)
    throw new AppError(
      'conflict',
      `Somebody named this "${row.name}" after you opened it. Nothing was saved; your name for it is still here. Load the page again to see theirs.`,
      { fields: { was: row.name } },
    );
  assertFree(
    neighbours(outline, shelf, id).filter((one) => one.id !== id),
    name,
  );
  if (shelf === 'skill') await renameSkill(tx, { id, name, was });
  else await renamePart(tx, { id, name });
  return { objectId: id, fields: ['name'] };
}

async function retire(tx: TeamPg, { outline, change, now }: Task<Of<'retire' | 'put-back'>>): Promise<Done> {
  const { shelf, id } = change;
  rowOf(outline, shelf, id);
  const parts =
    shelf === 'part' ? [id] : outline.parts.filter((part) => part.skillId === id).map((part) => part.id);
  const held = outline.ladders.filter((ladder) => !ladder.retired && parts.includes(ladder.partId));
  if (change.act === 'retire' && held.length > 0)
    throw wrong(
      'id',
      `still has ${held.map((ladder) => ladder.name).join(', ')}: retire or move its ladders first`,
    );
  await setRetired(tx, { shelf, id, retiredAt: change.act === 'retire' ? now : null });
  return { objectId: id, fields: [change.act === 'retire' ? 'retired' : 'put back'] };
}

async function order(tx: TeamPg, { outline, change }: Task<Of<'order'>>): Promise<Done> {
  const { shelf, was, order: wanted } = change;
  const [first] = was;
  if (first === undefined) throw wrong('was', 'names nothing to put in order');
  const shelved = neighbours(outline, shelf, first).filter((row) => !row.retired);
  const now = shelved.map((row) => row.id);
  if (now.join() !== was.join())
    throw new AppError(
      'conflict',
      'Somebody changed this list after you opened it. Nothing was saved. Load the page again, then put it in order.',
    );
  if ([...wanted].sort().join() !== [...now].sort().join())
    throw wrong('order', 'must name each of the list once: load the page again');
  const places = shelved.map((row) => row.position).sort((a, b) => a - b);
  await setPositions(
    tx,
    shelf,
    wanted.map((id, index) => ({ id, position: places[index] ?? index })),
  );
  return { objectId: first, fields: [`order of ${shelf}s`] };
}

/** Those on the same shelf as `id`: all skills, the parts of one skill, the ladders of one part. */
function neighbours(outline: Outline, shelf: 'skill' | 'part' | 'ladder', id: string): OutlineRow[] {
  if (shelf === 'skill') return outline.skills;
  if (shelf === 'part') {
    const skillId = outline.parts.find((part) => part.id === id)?.skillId;
    return outline.parts.filter((part) => part.skillId === skillId);
  }
  const partId = outline.ladders.find((ladder) => ladder.id === id)?.partId;
  return outline.ladders.filter((ladder) => ladder.partId === partId);
}

function rowOf(outline: Outline, shelf: 'skill' | 'part', id: string): OutlineRow {
  const row = (shelf === 'skill' ? outline.skills : outline.parts).find((one) => one.id === id);
  if (!row) throw new AppError('not-found', `This ${shelf} is not here.`);
  return row;
}

function assertFree(rows: OutlineRow[], name: string): void {
  const same = rows.find((row) => row.name.toLowerCase() === name.toLowerCase());
  if (same)
    throw wrong('name', `"${same.name}" is there already${same.retired ? ', retired: put it back' : ''}`);
}

function after(rows: OutlineRow[]): number {
  return Math.max(0, ...rows.map((row) => row.position)) + 1;
}

function wrong(field: string, words: string): AppError {
  return new AppError('invalid', `${field}: ${words}`, { fields: { [field]: words } });
}
