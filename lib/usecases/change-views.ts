import type { Actor } from '#lib/auth/actor.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import {
  deleteView,
  hasViewNamed,
  listViews,
  renameView,
  type SavedView,
  upsertView,
} from '#lib/db/saved-views.ts';
import { AppError } from '#lib/errors.ts';
import { boardFilter } from '#lib/schemas/board.ts';
import type { ViewAct } from '#lib/schemas/board-reads.ts';
import { queryOf } from '#lib/views/board-query.ts';
import { assertMember } from './assert-member.ts';

/** More are no help in finding one. */
const MOST_VIEWS = 30;

/** Keeps, renames or deletes one of the member's own views of the board. Returns all of them as they are then. */
export async function changeViews(actor: Actor, input: ViewAct): Promise<{ views: SavedView[] }> {
  const memberId = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    if (input.act === 'keep') await keep(tx, memberId, input);
    else if (input.act === 'rename') await rename(tx, { memberId, id: input.id, name: input.name });
    else if (!(await deleteView(tx, { memberId, id: input.id }))) throw notThere();
    return { views: await listViews(tx, memberId) };
  });
}

async function keep(tx: TeamPg, memberId: string, view: { name: string; query: string }): Promise<void> {
  const query = queryOf(boardFilter.parse(Object.fromEntries(new URLSearchParams(view.query))));
  if (query === '') refuse('query', 'choose a filter first: this one hides nobody');
  const views = await listViews(tx, memberId);
  if (views.length >= MOST_VIEWS && !views.some((one) => one.name === view.name))
    refuse('name', `at most ${MOST_VIEWS} views can be kept: delete one first`);
  await upsertView(tx, { memberId, name: view.name, query });
}

async function rename(tx: TeamPg, view: { memberId: string; id: string; name: string }): Promise<void> {
  if (await hasViewNamed(tx, view)) refuse('name', 'another view has this name: choose another');
  if (!(await renameView(tx, view))) throw notThere();
}

function notThere(): AppError {
  return new AppError('not-found', 'This view is not there any more.');
}

function refuse(field: string, message: string): never {
  throw new AppError('invalid', `${field}: ${message}`, { fields: { [field]: message } });
}
