import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { listGuardians } from '#lib/db/guardians.ts';
import { findIntake, type IntakeRow } from '#lib/db/intakes.ts';
import { listToldHolds, listToldWords } from '#lib/db/told-holds.ts';
import { guardiansAgree } from '#lib/domain/intake/guardian-text.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { type KeptChange, keptAnswers, keptChanges } from '#lib/schemas/intake.ts';
import { answerLines, type ToldSection } from '#lib/views/intake/answer-lines.ts';
import {
  type GuardianLine,
  guardianLines,
  type HoldLine,
  holdLines,
  type WordLine,
  wordLines,
} from '#lib/views/intake/start-page.ts';
import { momentAsSaid } from '#lib/views/phone-dates.ts';

export type StartPage = {
  id: string;
  name: string;
  today: string;
  under18: boolean;
  /** How the intake stands, as a sentence. */
  state: string;
  isSent: boolean;
  holds: HoldLine[];
  words: WordLine[];
  guardians: GuardianLine[];
  guardiansAgree: boolean;
  told: ToldSection[];
  /** What an older form or another team kept otherwise. */
  others: [about: string, told: string][];
  changes: {
    key: string;
    when: string;
    by: string;
    field: string;
    before: string;
    after: string;
    why: string;
  }[];
};

/** Everything told at the start, with what waits; undefined: no such client here. */
export function loadStartPage(actor: Actor, clientId: string, now: Date): Promise<StartPage | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, clientId);
    if (!client) return undefined;
    const { zone, name } = client;
    const today = localDateOf(now, zone);
    const intake = await findIntake(tx, clientId);
    const guardians = await listGuardians(tx, clientId);
    const stored = (intake?.answers ?? {}) as Record<string, unknown>;
    const answers = keptAnswers.parse(stored);
    const when = (at: Date) => momentAsSaid(at, zone, now);
    return {
      id: clientId,
      name,
      today,
      under18: client.under18,
      state: stateInWords(intake, name, when),
      isSent: Boolean(intake?.completedAt),
      holds: holdLines(await listToldHolds(tx, clientId, today), today),
      words: wordLines(await listToldWords(tx, clientId), today),
      guardians: client.under18 ? guardianLines(guardians, zone, now) : [],
      guardiansAgree: guardiansAgree(guardians),
      told: answerLines(answers, 'other'),
      others: Object.entries(stored)
        .filter(([key]) => answers[key as keyof typeof answers] === undefined)
        .map(([key, value]) => [key, typeof value === 'string' ? value : JSON.stringify(value)]),
      changes: keptChanges.parse(intake?.changes ?? []).map((change, index) => ({
        key: `${change.at} ${index}`,
        when: when(new Date(change.at)),
        by: change.by,
        field: FIELD_WORDS[change.field] ?? change.field,
        before: inWords(change.field, change.before),
        after: inWords(change.field, change.after),
        why: change.why,
      })),
    };
  });
}

function stateInWords(intake: IntakeRow | undefined, name: string, when: (at: Date) => string): string {
  if (intake?.completedAt && intake.draft)
    return `${name} sent this ${when(intake.completedAt)}, and has begun to tell it again after a long break.`;
  if (intake?.completedAt) return `${name} sent this ${when(intake.completedAt)}.`;
  if (intake?.draft)
    return `${name} has begun; last saved ${when(intake.draftAt ?? intake.createdAt)}. It is not sent yet.`;
  return `${name} has told nothing yet. Today on the phone asks for it first.`;
}

const FIELD_WORDS: Record<string, string> = {
  health: 'health questions',
  week: 'usual week',
  bodyMassKg: 'body mass',
  birthYear: 'year of birth',
  breakWeeks: 'weeks without training',
  otherSport: 'other sport',
  job: 'work',
  goal: 'what is wanted',
};

/** One answer as its line says it; what has no line as it is. */
function inWords(field: string, value: KeptChange['before']): string {
  if (value === null || value === '') return 'nothing';
  const lines = answerLines(keptAnswers.parse({ [field]: value })).flatMap((section) => section.lines);
  if (lines.length > 0) return `“${lines.join(', ').replaceAll(/[“”]/g, '')}”`;
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}
