import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findMemberName } from '#lib/db/handover-packs.ts';
import { megabytes } from '#lib/domain/clip-bounds.ts';
import type { PackFilm, PackOptions } from '#lib/handover/pack-content.ts';
import { packedPeriod } from '#lib/handover/pack-report.ts';
import type { Block } from '#lib/handover/report/blocks.ts';
import { draftNext, draftSummary } from '#lib/handover/report/draft.ts';
import { firstPage } from '#lib/handover/report/first-page.ts';
import { openPackContent } from './open-pack-content.ts';

export type PackPreview = {
  name: string;
  period: { from: string; to: string };
  /** The first page of the report as it would be. */
  blocks: Block[];
  /** What the computer would write where the coach writes nothing. */
  draft: { summary: string; next: string };
  /** Whether the client agreed that the record is handed on. */
  mayShare: boolean;
  sets: number;
  /** "3 films, 12 MB". */
  films: string;
};

function filmsInWords(films: readonly PackFilm[]): string {
  if (films.length === 0) return 'none is kept';
  const bytes = films.reduce((sum, film) => sum + film.bytes, 0);
  return `${films.length === 1 ? '1 film' : `${films.length} films`}, ${megabytes(bytes)}`;
}

/** The first page of a pack before it is made. Keeps nothing. */
export async function previewPack(
  actor: Actor,
  { clientId, options }: { clientId: string; options: PackOptions },
  now: Date,
): Promise<PackPreview> {
  return withTeamPg(
    actor.scope,
    async (tx) => {
      const madeBy = (actor.memberId && (await findMemberName(tx, actor.memberId))) || 'a coach';
      const content = await openPackContent(tx, { clientId, madeBy, options, now });
      const { report, period, history } = await packedPeriod(content, options);
      return {
        name: history.client.name,
        period,
        blocks: firstPage(report),
        draft: { summary: draftSummary(report).join(' '), next: draftNext(report).join('\n') },
        mayShare: report.record.consents.some(
          (one) => one.kind === 'share-with-next-coach' && one.withdrawnAt === null,
        ),
        films: filmsInWords(content.films),
        sets: history.checkIns.reduce((sum, one) => sum + one.sets.length, 0),
      };
    },
    { isolation: 'repeatable read' },
  );
}
