import type { Actor } from '#lib/auth/actor.ts';
import { may } from '#lib/auth/permissions.ts';
import { countApprovals } from '#lib/db/approvals.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listRightsNews } from '#lib/db/consents.ts';
import { listViews, type SavedView } from '#lib/db/saved-views.ts';
import { listStartNews } from '#lib/db/told-holds.ts';
import type { Tier } from '#lib/domain/vocabulary.ts';
import { firstRows } from '#lib/views/board-first-rows.ts';
import type { BoardFilter, DrawnBoard } from '#lib/views/board-types.ts';
import { startLines } from '#lib/views/intake/board-lines.ts';
import { rightsLines } from '#lib/views/rights/board-lines.ts';
import { boardTeamLines, type TeamLine } from '#lib/views/team-page.ts';
import { drawRows } from './draw-rows.ts';
import { readBoard } from './read-board.ts';

/** A board with more rows than this comes with the first ones of each group; the rest follows as it is asked for. */
const ROWS_WHOLE = 50;
const ROWS_FIRST: Record<Tier, number> = { now: 20, today: 6, 'this-week': 6, 'good-news': 3 };

/** Answers of the start are news for two weeks. Own choice. */
const START_NEWS_MS = 14 * 86_400_000;

const FIRST = ['first', firstRows(ROWS_FIRST, ROWS_WHOLE)] as const;

/** The coach's morning and the views that the coach keeps of it, in a fixed number of queries. */
export async function loadBoard(
  actor: Actor,
  filter: BoardFilter,
  now: Date,
): Promise<DrawnBoard & { views: SavedView[]; lines: TeamLine[] }> {
  const read = await readBoard(actor, filter, now, FIRST);
  const cut = read.board.groups;
  const drawn = await drawRows(
    actor.scope,
    read,
    cut.flatMap((group) => group.rows),
  );
  const groups = cut.map((group) => ({
    ...group,
    rows: group.rows.map((row) => drawn.get(row.clientId)).filter((row) => row !== undefined),
  }));
  return withTeamPg(actor.scope, async (tx) => {
    const views = actor.memberId ? await listViews(tx, actor.memberId) : [];
    const lines = boardTeamLines(
      {
        ...(await countApprovals(tx, actor.memberId, now)),
        covers: read.covers,
        approves: may(actor.role, 'approve-acts'),
      },
      actor.memberId,
    );
    const news = actor.memberId ? await listRightsNews(tx, actor.memberId) : [];
    const start = actor.memberId
      ? await listStartNews(tx, {
          coachId: actor.memberId,
          date: read.today,
          since: new Date(now.getTime() - START_NEWS_MS),
        })
      : [];
    return { ...read.board, groups, views, lines: [...startLines(start), ...rightsLines(news), ...lines] };
  });
}
