import type { Role } from '#lib/domain/vocabulary.ts';

type PermissionEntry = { readonly roles: readonly Role[]; readonly meaning: string };

const MEMBERS = ['lead', 'coach', 'assistant'] as const;
const COACHES = ['lead', 'coach'] as const;

/** Who may do what, in alphabetical order. `open` is for people who are not signed in. */
export const PERMISSIONS = {
  'act-on-reasons': { roles: COACHES, meaning: 'take a step, put aside, close with a verdict, undo, answer' },
  'approve-acts': { roles: COACHES, meaning: 'approve what an assistant prepared, or send it back' },
  'arrange-cover': { roles: COACHES, meaning: 'say who has whose clients during days away' },
  'ask-coach': { roles: ['client', 'guardian'], meaning: 'ask the coach a question' },
  'check-in': { roles: ['client'], meaning: 'write, correct, delete and send own check-ins and absences' },
  'edit-clients': { roles: COACHES, meaning: 'make a client, change who they are, place them on rungs' },
  'edit-ladders': { roles: COACHES, meaning: "change the team's skills, ladders, rungs and drills" },
  'edit-plans': { roles: COACHES, meaning: 'write a plan version' },
  'export-clients': { roles: COACHES, meaning: 'take the whole history of a client out' },
  'invite-clients': { roles: COACHES, meaning: 'make the link that signs a client in' },
  'keep-views': { roles: MEMBERS, meaning: 'keep own filters of the board under a name' },
  'manage-team': { roles: ['lead'], meaning: 'add members, change settings of the team' },
  'move-clients': {
    roles: COACHES,
    meaning: 'move clients to another coach, and read the note that came with one',
  },
  open: { roles: [], meaning: 'everybody, also without signing in' },
  'prepare-acts': {
    roles: MEMBERS,
    meaning: 'answer, take a step, write a plan; of an assistant without leave it waits for approval',
  },
  'run-nights': { roles: COACHES, meaning: 'check one client or all again now' },
  'see-board': { roles: MEMBERS, meaning: 'read the board of the team' },
  'see-checks': { roles: MEMBERS, meaning: 'read the numbers that the checks go by' },
  'see-clients': { roles: MEMBERS, meaning: 'read the pages of every client of the team' },
  'see-ladders': { roles: MEMBERS, meaning: "read the team's ladders and who stands on them" },
  'see-mailbox': { roles: MEMBERS, meaning: 'read the mails the demo would have sent' },
  'see-nights': { roles: MEMBERS, meaning: 'read what the night runs did' },
  'see-own-training': {
    roles: ['client', 'guardian'],
    meaning: "read one's own plan, check-ins and the coach's words",
  },
  'see-steps': { roles: MEMBERS, meaning: 'read what became of the steps that were taken' },
  'see-stills': {
    roles: [...MEMBERS, 'client', 'guardian'],
    meaning: 'see stills of questions: members those of the team, a client their own',
  },
  'see-team': {
    roles: MEMBERS,
    meaning: 'read who is in the team, who covers for whom, what waits for approval',
  },
  'write-to-clients': { roles: COACHES, meaning: 'write words on check-ins and mark them as seen' },
} as const satisfies Record<string, PermissionEntry>;
export type Permission = keyof typeof PERMISSIONS;

export function may(role: Role, permission: Permission): boolean {
  const roles: readonly Role[] = PERMISSIONS[permission].roles;
  return permission === 'open' || roles.includes(role);
}

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
export type RouteRow = {
  /** The address as the folders say it, without route groups: `/api/clients/[clientId]`. */
  readonly path: string;
  /** `page`, or the methods that a route.ts exports, with the permission of each. */
  readonly allows: { readonly page: Permission } | { readonly [method in Method]?: Permission };
};

/** Every page.tsx and route.ts of app/, in alphabetical order; a test fails on one without a row. */
export const ROUTES: readonly RouteRow[] = [
  { path: '/', allows: { page: 'see-board' } },
  { path: '/answers', allows: { page: 'see-own-training' } },
  { path: '/api/absences', allows: { POST: 'check-in' } },
  { path: '/api/auth/sign-in/email', allows: { POST: 'open' } },
  { path: '/api/board/acts', allows: { POST: 'prepare-acts' } },
  { path: '/api/board/changes', allows: { GET: 'see-board' } },
  { path: '/api/board/folds', allows: { GET: 'see-board' } },
  { path: '/api/board/rows', allows: { GET: 'see-board' } },
  { path: '/api/board/views', allows: { POST: 'keep-views' } },
  { path: '/api/check-ins', allows: { POST: 'check-in' } },
  { path: '/api/check-ins/[checkInId]/delete', allows: { POST: 'check-in' } },
  { path: '/api/check-ins/plain', allows: { POST: 'check-in' } },
  { path: '/api/checks', allows: { POST: 'manage-team' } },
  { path: '/api/checks/replay', allows: { POST: 'edit-clients' } },
  { path: '/api/clients', allows: { POST: 'edit-clients' } },
  { path: '/api/clients/[clientId]/assessments', allows: { POST: 'edit-plans' } },
  { path: '/api/clients/[clientId]/assessments/draft', allows: { POST: 'edit-plans' } },
  { path: '/api/clients/[clientId]/check-ins/[checkInId]/seen', allows: { POST: 'write-to-clients' } },
  { path: '/api/clients/[clientId]/check-ins/[checkInId]/words', allows: { POST: 'write-to-clients' } },
  { path: '/api/clients/[clientId]/checks', allows: { POST: 'edit-clients' } },
  { path: '/api/clients/[clientId]/clinician-word', allows: { POST: 'edit-clients' } },
  { path: '/api/clients/[clientId]/export', allows: { GET: 'export-clients' } },
  { path: '/api/clients/[clientId]/limits', allows: { POST: 'edit-clients' } },
  { path: '/api/clients/[clientId]/limits/[limitId]/end', allows: { POST: 'edit-clients' } },
  { path: '/api/clients/[clientId]/link', allows: { POST: 'invite-clients' } },
  { path: '/api/clients/[clientId]/notes', allows: { POST: 'edit-clients' } },
  { path: '/api/clients/[clientId]/plans', allows: { POST: 'prepare-acts' } },
  { path: '/api/clients/[clientId]/standing', allows: { POST: 'edit-clients' } },
  { path: '/api/clients/[clientId]/standing/undo', allows: { POST: 'edit-clients' } },
  { path: '/api/clients/[clientId]/step-draft', allows: { GET: 'prepare-acts', POST: 'edit-plans' } },
  { path: '/api/clients/import', allows: { POST: 'edit-clients' } },
  { path: '/api/demo-phone', allows: { POST: 'open' } },
  { path: '/api/join', allows: { POST: 'open' } },
  { path: '/api/join/team', allows: { POST: 'open' } },
  { path: '/api/ladders', allows: { POST: 'edit-ladders' } },
  { path: '/api/ladders/[ladderId]', allows: { POST: 'edit-ladders' } },
  { path: '/api/ladders/outline', allows: { POST: 'edit-ladders' } },
  { path: '/api/nights/run', allows: { POST: 'run-nights' } },
  { path: '/api/notices/mail', allows: { POST: 'check-in' } },
  { path: '/api/notices/push', allows: { POST: 'check-in' } },
  { path: '/api/notices/push/off', allows: { POST: 'check-in' } },
  { path: '/api/plan-templates', allows: { POST: 'edit-plans' } },
  { path: '/api/plan-templates/[templateId]/delete', allows: { POST: 'edit-plans' } },
  { path: '/api/questions', allows: { POST: 'ask-coach' } },
  { path: '/api/questions/[questionId]/stills/[stillId]', allows: { POST: 'ask-coach' } },
  { path: '/api/sign-in', allows: { POST: 'open' } },
  { path: '/api/sign-in-link', allows: { POST: 'open' } },
  { path: '/api/sign-out', allows: { POST: 'open' } },
  { path: '/api/stills/[stillId]', allows: { GET: 'see-stills' } },
  { path: '/api/team/approvals/[approvalId]', allows: { POST: 'approve-acts' } },
  { path: '/api/team/covers', allows: { POST: 'arrange-cover' } },
  { path: '/api/team/covers/[coverId]/end', allows: { POST: 'arrange-cover' } },
  { path: '/api/team/invitations', allows: { POST: 'manage-team' } },
  { path: '/api/team/invitations/[invitationId]', allows: { POST: 'manage-team' } },
  { path: '/api/team/members/[memberId]/end', allows: { POST: 'manage-team' } },
  { path: '/api/team/members/[memberId]/leaves', allows: { POST: 'manage-team' } },
  { path: '/api/team/members/[memberId]/return', allows: { POST: 'manage-team' } },
  { path: '/api/team/members/[memberId]/role', allows: { POST: 'manage-team' } },
  { path: '/api/team/moves', allows: { POST: 'move-clients' } },
  { path: '/api/team/moves/[moveId]/read', allows: { POST: 'move-clients' } },
  { path: '/api/team/moves/undo', allows: { POST: 'move-clients' } },
  { path: '/api/words/read', allows: { POST: 'check-in' } },
  { path: '/api/zone', allows: { POST: 'check-in' } },
  { path: '/away', allows: { page: 'check-in' } },
  { path: '/check-in', allows: { page: 'check-in' } },
  { path: '/check-in/plain', allows: { page: 'check-in' } },
  { path: '/checks', allows: { page: 'see-checks' } },
  { path: '/clients', allows: { page: 'see-clients' } },
  { path: '/clients/[clientId]', allows: { page: 'see-clients' } },
  { path: '/clients/[clientId]/gaps', allows: { page: 'edit-plans' } },
  { path: '/clients/[clientId]/plan', allows: { page: 'prepare-acts' } },
  { path: '/clients/[clientId]/reasons/[reasonId]', allows: { page: 'see-clients' } },
  { path: '/clients/new', allows: { page: 'edit-clients' } },
  { path: '/earlier', allows: { page: 'check-in' } },
  { path: '/join/[token]', allows: { page: 'open' } },
  { path: '/join/closed', allows: { page: 'open' } },
  { path: '/ladders', allows: { page: 'see-ladders' } },
  { path: '/ladders/[ladderId]', allows: { page: 'see-ladders' } },
  { path: '/ladders/[ladderId]/openings', allows: { page: 'edit-ladders' } },
  { path: '/ladders/[ladderId]/rungs/[rungId]', allows: { page: 'edit-ladders' } },
  { path: '/ladders/[ladderId]/rungs/[rungId]/split', allows: { page: 'edit-ladders' } },
  { path: '/ladders/[ladderId]/rungs/new', allows: { page: 'edit-ladders' } },
  { path: '/ladders/new', allows: { page: 'edit-ladders' } },
  { path: '/livez', allows: { GET: 'open' } },
  { path: '/mailbox', allows: { page: 'see-mailbox' } },
  { path: '/nights', allows: { page: 'see-nights' } },
  { path: '/progress', allows: { page: 'see-own-training' } },
  { path: '/readyz', allows: { GET: 'open' } },
  { path: '/rest-day', allows: { page: 'check-in' } },
  { path: '/sign-in', allows: { page: 'open' } },
  { path: '/steps', allows: { page: 'see-steps' } },
  { path: '/sw.js', allows: { GET: 'open' } },
  { path: '/today', allows: { page: 'see-own-training' } },
  { path: '/without-signal', allows: { page: 'open' } },
];
