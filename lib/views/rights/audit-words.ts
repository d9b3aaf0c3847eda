import type { AuditKind } from '#lib/domain/kept-record.ts';

type Kind = Exclude<AuditKind, 'all'>;
type Said = readonly [kind: Kind, words: string];

/** What each line of the audit says, after the name of who did it. */
const SAID: Readonly<Record<string, Said>> = {
  'record-read': ['reads', 'looked at'],
  'client-exported': ['out', 'took the record out'],
  'pack-made': ['out', 'made a handover pack'],
  'link-made': ['out', 'made a link to the record that ends'],
  'link-revoked': ['out', 'ended a link to the record'],
  'link-opened': ['out', 'opened the record by a link'],
  'link-code-wrong': ['out', 'tried a link to the record with a code that does not fit'],
  'team-exported': ['out', 'took everything of the team out'],
  'role-changed': ['roles', 'changed the role of'],
  'leave-given': ['roles', 'changed what may be done without approval by'],
  'member-added': ['roles', 'added a member'],
  'member-invited': ['roles', 'asked somebody into the team'],
  'invitation-renewed': ['roles', 'made the link of an invitation anew'],
  'invitation-withdrawn': ['roles', 'took an invitation back'],
  'invitation-taken-back': ['roles', 'took an invitation back'],
  'member-joined': ['roles', 'joined the team'],
  'member-left': ['roles', 'ended the membership of'],
  'member-returned': ['roles', 'took back into the team'],
  'team-made': ['roles', 'made the team'],
  'consent-given': ['consents', 'gave consent'],
  'consent-withdrawn': ['consents', 'took consent back'],
  'deletion-asked': ['deletions', 'asked that the record be deleted'],
  'deletion-taken-back': ['deletions', 'took back that the record be deleted'],
  'deletion-announced': ['deletions', 'announced that a record is deleted, as its years are over'],
  'client-deleted': ['deletions', 'deleted a client with everything of theirs'],
  'retention-changed': ['deletions', 'changed how long records are kept'],
  'check-in-deleted': ['deletions', 'deleted a check-in'],
  'signed-in': ['sign-ins', 'signed in'],
  'entry-link-used': ['sign-ins', 'came in by a link'],
  'sign-in-link-mailed': ['sign-ins', 'was mailed a link to sign in'],
  'client-invited': ['sign-ins', 'made a link to sign in'],
  'client-made': ['acts', 'made the client'],
  'client-taken-in': ['acts', 'took the client in with a pack of another team'],
  'client-moved': ['acts', 'moved the client to another coach'],
  'move-undone': ['acts', 'took back a move to another coach'],
  'client-seen': ['acts', 'marked the client as looked at'],
  'check-in-seen': ['acts', 'marked a check-in as seen'],
  'words-written': ['acts', 'wrote words'],
  'question-answered': ['acts', 'answered a question'],
  'film-asked': ['acts', 'asked for a film'],
  'film-taken-back': ['acts', 'took back what film was asked for'],
  'clip-begun': ['acts', 'began to send a film'],
  'clip-taken': ['acts', 'decoded a film and kept it'],
  'clip-refused': ['acts', 'decoded a film and did not take it'],
  'clip-kept': ['acts', 'keeps a film for as long as the record'],
  'clip-not-kept': ['acts', 'lets the days of a film count again'],
  'clip-let-go': ['deletions', 'removed a film whose days were over'],
  'upload-let-go': ['deletions', 'removed an upload that stood still for a day'],
  'film-looked-at': ['acts', 'looked at a film'],
  'set-judged': ['acts', 'said what a set looked like on film'],
  'still-taken': ['acts', 'took a still from a film'],
  'joints-placed': ['acts', 'placed joints on a still'],
  'still-attached': ['acts', 'sent a picture'],
  'note-added': ['acts', 'wrote a note private to coaches'],
  'limit-added': ['acts', 'set a limit'],
  'limit-ended': ['acts', 'ended a limit'],
  'clinician-word-recorded': ['acts', 'recorded a clinician’s word'],
  'intake-sent': ['acts', 'told about the start'],
  'intake-changed': ['acts', 'changed what was told at the start'],
  'guardian-named': ['acts', 'named a parent or guardian'],
  'guardian-link-made': ['sign-ins', 'made a link for a parent or guardian'],
  'guardian-agreed': ['consents', 'agreed as parent or guardian'],
  'guardian-declined': ['consents', 'said no as parent or guardian'],
  'guardian-withdrawn': ['consents', 'took back their yes as parent or guardian'],
  'assessment-saved': ['acts', 'kept an assessment'],
  'start-tests-asked': ['acts', 'asked for start tests'],
  'start-tests-taken-back': ['acts', 'took start tests back'],
  'start-tests-placed': ['acts', 'placed the client by start tests'],
  'start-placing-undone': ['acts', 'took the placing by start tests back'],
  'plan-saved': ['acts', 'wrote a version of the plan'],
  'plan-template-kept': ['acts', 'kept a plan to start others from'],
  'plan-template-deleted': ['acts', 'deleted a kept plan'],
  'step-taken': ['acts', 'took a step'],
  'reasons-put-aside': ['acts', 'put reasons aside'],
  'reasons-closed': ['acts', 'closed reasons'],
  'reasons-known': ['acts', 'folded a reason as known'],
  'reasons-known-no-more': ['acts', 'unfolded a known reason'],
  'act-undone': ['acts', 'undid an act'],
  'act-prepared': ['acts', 'prepared an act for approval'],
  'act-approved': ['acts', 'approved a prepared act'],
  'act-overtaken': ['acts', 'found a prepared act overtaken'],
  'act-sent-back': ['acts', 'sent a prepared act back'],
  'prepared-act-withdrawn': ['acts', 'took a prepared act back'],
  'decision-undone': ['acts', 'undid an approval'],
  'standing-changed': ['acts', 'changed the standing'],
  'standing-undone': ['acts', 'took a change of standing back'],
  'standing-applied': ['acts', 'began a standing whose day had come'],
  'standing-dropped': ['acts', 'dropped a standing that no longer followed'],
  'list-imported': ['acts', 'imported a list of clients'],
  'zone-followed': ['acts', 'moved to another time zone'],
  'settings-saved': ['acts', 'changed the numbers of the checks'],
  'answering-hours-set': ['acts', 'set the answering hours'],
  'cover-set': ['acts', 'set a cover'],
  'cover-ended': ['acts', 'ended a cover'],
  'ladder-made': ['acts', 'made a ladder'],
  'ladder-changed': ['acts', 'changed a ladder'],
  'outline-changed': ['acts', 'changed skills and parts'],
  'reply-kept': ['acts', 'kept a reply'],
  'kept-reply-changed': ['acts', 'changed a kept reply'],
  'kept-reply-retired': ['acts', 'retired a kept reply'],
  'kept-reply-taken-back': ['acts', 'took a retired reply back'],
  'morning-mail-chosen': ['acts', 'chose when the morning mail comes'],
};

export const AUDIT_KIND_LABELS: Readonly<Record<AuditKind, string>> = {
  all: 'everything',
  reads: 'who looked at a record',
  out: 'what was taken out',
  roles: 'roles and members',
  consents: 'consents',
  deletions: 'deletions',
  'sign-ins': 'signing in',
  acts: 'acts of coaching',
};

/** What of a record was opened, before the client's name, and to the client. */
const READS: Readonly<Record<string, readonly [of: string, own: string]>> = {
  'client-page': ['the page of', 'your page'],
  plan: ['the plan of', 'your plan'],
  gaps: ['the gaps of', 'your gaps'],
  start: ['the start of', 'your start'],
  reason: ['the working of a reason of', 'the working of a reason about you'],
  record: ['the consents and the record of', 'your consents and your record'],
  intake: ['what was told at the start by', 'what you told at the start'],
  picture: ['a picture of', 'a picture of yours'],
  film: ['a film of', 'a film of yours'],
};

/** Names of actions of a kind; null: all. */
export function actionsOf(kind: AuditKind): string[] | null {
  if (kind === 'all') return null;
  return Object.keys(SAID).filter((action) => SAID[action]?.[0] === kind);
}

type Line = {
  action: string;
  /** Who did it. */
  by: string | null;
  objectId: string | null;
  fields: readonly string[];
  client: string | null;
  clientId: string | null;
  member: string | null;
};

/** "looked at the page of Anahit", "changed the role of Tove": what follows the name of who did it. */
export function auditWords(line: Line): string {
  const said = saidOf(line);
  if (line.action === 'record-read') return `looked at ${readWhat(line)[0]} ${clientOf(line) || 'a client'}`;
  if (line.member && /(of|by|team)$/.test(said)) return `${said} ${line.member}`;
  const of = clientOf(line);
  if (line.action.startsWith('link-')) return `${said}${forReader(line)}${of ? `: ${of}` : ''}`;
  return of ? `${said}: ${of}` : said;
}

/** The same to the client: "looked at your page". */
export function auditWordsForClient(line: Line): string {
  if (line.action === 'record-read') return `looked at ${readWhat(line)[1]}`;
  const said = saidOf(line);
  return line.action.startsWith('link-') ? `${said}${forReader(line)}` : said;
}

function saidOf({ action, objectId }: Line): string {
  const handing = objectId === 'share-with-next-coach';
  if (handing && action === 'consent-given') return 'allowed that the record is handed on';
  if (handing && action === 'consent-withdrawn') return 'took back that the record may be handed on';
  return SAID[action]?.[1] ?? action.replaceAll('-', ' ');
}

function forReader({ member }: Line): string {
  return member ? `, made for ${member}` : '';
}

const BY_READERS = ['link-opened', 'link-code-wrong'];

/** Who did it, as the page of a client or of a lead names them; `self`: the account of who looks. */
export function byWhom(
  line: { userId: string | null; by: string | null; action?: string },
  self?: string,
): string {
  if (line.action !== undefined && BY_READERS.includes(line.action)) return 'A reader';
  if (self !== undefined && line.userId === self) return 'You';
  return line.by ?? (line.userId ? 'somebody who left' : 'The worker');
}

function readWhat({ fields }: Line): readonly [of: string, own: string] {
  return READS[fields[0] ?? ''] ?? ['the record of', 'your record'];
}

/** Empty where the act was the client's own: the line begins with their name. */
function clientOf({ by, client, clientId }: Line): string {
  if (client) return client === by ? '' : client;
  return clientId ? `a client who was deleted (${clientId.slice(0, 8)})` : '';
}
