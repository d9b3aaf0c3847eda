import { exactDate, longDate, shortDate } from './say-date.ts';

type Member = {
  id: string;
  role: 'lead' | 'coach' | 'assistant';
  name: string;
  email: string;
  zone: string;
  today: string;
  createdAt: Date;
  clients: number;
  leaves: string[];
};
type Cover = {
  id: string;
  memberId: string;
  name: string;
  coveredById: string;
  coveredBy: string;
  from: string;
  to: string;
  clients: number;
};

export const ROLE_LABELS = { lead: 'lead', coach: 'coach', assistant: 'assistant' } as const;
/** What each role may do, said where it is chosen. */
export const ROLE_MEANINGS = {
  lead: 'coaches, and changes the team: roles, invitations, leave, moves and covers of everybody',
  coach: 'coaches: acts on every client, approves what assistants prepare, moves own clients',
  assistant:
    'prepares answers, steps and plans; a coach approves each, unless a lead gave leave for its kind',
} as const;
export const LEAVE_LABELS = { answer: 'answers', step: 'steps', plan: 'plans', film: 'films' } as const;

export type MemberLine = {
  id: string;
  name: string;
  email: string;
  role: Member['role'];
  self: boolean;
  clients: number;
  since: { said: string; exact: string };
  zone: string;
  /** Cover now, in words; empty: none. */
  cover: string;
  leaves: string[];
};

/** Members as the page lists them, `today` being the local date of who looks. */
export function memberLines(
  members: readonly Member[],
  covers: readonly Cover[],
  self: string | null,
): MemberLine[] {
  return members.map((member) => {
    const since = member.createdAt.toISOString().slice(0, 10);
    return {
      id: member.id,
      name: member.name,
      email: member.email,
      role: member.role,
      self: member.id === self,
      clients: member.clients,
      since: { said: `${shortDate(since)} ${since.slice(0, 4)}`, exact: exactDate(since) },
      zone: member.zone,
      cover: coverNow(member, covers),
      leaves: member.leaves,
    };
  });
}

function coverNow({ id, today }: Member, covers: readonly Cover[]): string {
  const now = covers.filter(({ from, to }) => from <= today && today <= to);
  const away = now.filter(({ memberId }) => memberId === id);
  const covering = now.filter(({ coveredById }) => coveredById === id);
  return [
    ...away.map(({ coveredBy, to }) => `away until ${longDate(to)}, covered by ${coveredBy}`),
    ...covering.map(({ name, to }) => `covers for ${name} until ${longDate(to)}`),
  ].join('; ');
}

/** "Ruth is away from Tuesday 1 December to Thursday 10 December; Tove has the 12 clients." */
export function coverInWords({ name, coveredBy, from, to, clients }: Cover): string {
  const days = from === to ? `on ${longDate(from)}` : `from ${longDate(from)} to ${longDate(to)}`;
  return `${name} is away ${days}; ${coveredBy} has ${clients === 1 ? 'the 1 client' : `the ${clients} clients`}`;
}

export type TeamLine = { words: string; href: string | null };

/** The lines at the head of a coach's board: who has whose clients today, and what waits for approval. */
export function boardTeamLines(
  about: { covers: readonly Cover[]; waiting: number; own: number; sentBack: number; approves: boolean },
  memberId: string | null,
): TeamLine[] {
  const covers = about.covers.flatMap((cover) => {
    const until = `until ${longDate(cover.to)}`;
    const of = cover.clients === 1 ? '1 client' : `${cover.clients} clients`;
    if (cover.coveredById === memberId)
      return [{ words: `You have ${cover.name}’s ${of} too, ${until}.`, href: '/team' }];
    if (cover.memberId === memberId)
      return [{ words: `${cover.coveredBy} has your ${of} ${until}.`, href: '/team' }];
    return [];
  });
  const acts = (count: number) => (count === 1 ? '1 act' : `${count} acts`);
  const count = about.approves ? about.waiting : about.own;
  const verb = count === 1 ? 'waits' : 'wait';
  const waiting = about.approves ? `${verb} for your approval` : `of yours ${verb} for approval`;
  return [
    ...covers,
    ...(count > 0 ? [{ words: `${acts(count)} ${waiting}`, href: '/team/approvals' }] : []),
    ...(about.sentBack > 0
      ? [{ words: `${acts(about.sentBack)} came back to you`, href: '/team/approvals' }]
      : []),
  ];
}

/** Covers as the page lists them, each with who may end it. */
export function coverLines(covers: readonly Cover[], who: { self: string; leads: boolean }) {
  return covers.map(({ id, memberId, coveredById, from, to, ...cover }) => ({
    id,
    memberId,
    coveredById,
    from,
    to,
    words: coverInWords({ id, memberId, coveredById, from, to, ...cover }),
    mayEnd: who.leads || memberId === who.self,
  }));
}

type Invitation = {
  id: string;
  email: string;
  role: Member['role'];
  by: string;
  createdAt: Date;
  expiresAt: Date;
};

/** "sol@new.example, as an assistant, asked by Ines on 25 Nov; the link works until 2 Dec" */
export function invitationLines(invitations: readonly Invitation[], now: Date) {
  const day = (at: Date) => shortDate(at.toISOString().slice(0, 10));
  return invitations.map(({ id, email, role, by, createdAt, expiresAt }) => {
    const as = role === 'assistant' ? 'as an assistant' : `as a ${role}`;
    const life =
      expiresAt > now
        ? `the link works until ${day(expiresAt)}`
        : `the link is out of date since ${day(expiresAt)}`;
    return { id, email, words: `${email}, ${as}, asked by ${by} on ${day(createdAt)}; ${life}` };
  });
}
