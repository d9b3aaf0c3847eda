import type { CheckKind, Standing } from '#lib/domain/vocabulary.ts';
import { STANDING_LABELS } from '../standing-labels.ts';

type Row = {
  id: string;
  name: string;
  standing: Standing;
  coachId: string;
  unseenDays: number;
  skills: readonly string[];
  kinds: readonly CheckKind[];
  stands: readonly { ladderId: string; rungId: string }[];
};
type Filter = {
  coach?: string | undefined;
  standing?: Standing | undefined;
  skill?: string | undefined;
  ladder?: string | undefined;
  rung?: string | undefined;
  reason?: CheckKind | undefined;
  /** Nobody has looked for this many days or more. */
  unseen?: number | undefined;
  /** Part of the name, capitals and accents aside. */
  q?: string | undefined;
};
export type Recipient = { id: string; name: string; about: string };

/** The clients that a message is aimed at, by name: those that fit everything the filter says. Never one who left. */
export function recipients(rows: readonly Row[], filter: Filter): Recipient[] {
  return rows
    .filter((row) => row.standing !== 'left' && fits(row, filter))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
    .map((row) => ({ id: row.id, name: row.name, about: aboutOf(row) }));
}

function fits(row: Row, { coach, standing, skill, ladder, rung, reason, unseen, q }: Filter): boolean {
  return (
    (coach === undefined || row.coachId === coach) &&
    (standing === undefined || row.standing === standing) &&
    (skill === undefined || row.skills.includes(skill)) &&
    (ladder === undefined || row.stands.some(({ ladderId }) => ladderId === ladder)) &&
    (rung === undefined || row.stands.some(({ rungId }) => rungId === rung)) &&
    (reason === undefined || row.kinds.includes(reason)) &&
    (unseen === undefined || row.unseenDays >= unseen) &&
    (q === undefined || plain(row.name).includes(plain(q)))
  );
}

function aboutOf({ standing, unseenDays }: Row): string {
  const looked =
    unseenDays <= 0
      ? 'looked at today'
      : `looked at ${unseenDays === 1 ? '1 day' : `${unseenDays} days`} ago`;
  return standing === 'in-training' ? looked : `${STANDING_LABELS[standing]}, ${looked}`;
}

function plain(text: string): string {
  return text.normalize('NFD').replaceAll(/\p{M}/gu, '').trim().toLowerCase();
}
