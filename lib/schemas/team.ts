import { z } from 'zod';
import { isZone } from '#lib/domain/local-date.ts';
import { plainText } from './plain-text.ts';

const MEMBER_ROLES = ['lead', 'coach', 'assistant'] as const;
/** Kinds of act that an assistant prepares, and may be given leave for. */
export const PREPARED_ACTS = ['answer', 'step', 'plan', 'film'] as const;
export type PreparedAct = (typeof PREPARED_ACTS)[number];

const member = z.uuid({ error: 'choose somebody of the team' });
const role = z.enum(MEMBER_ROLES, 'choose lead, coach or assistant');
const date = z.iso.date('write the date as YYYY-MM-DD');
const note = plainText.refine((text) => text.length <= 2_000, 'at most 2,000 letters').default('');
const clientIds = z
  .array(z.uuid({ error: 'must be ids of clients' }))
  .min(1, 'tick at least one client')
  .max(1_000, 'at most 1,000 clients at once');

export const memberAddress = z.object({ memberId: z.uuid() });
export const invitationAddress = z.object({ invitationId: z.uuid() });
export const moveAddress = z.object({ moveId: z.uuid() });
export const coverAddress = z.object({ coverId: z.uuid() });
export const approvalAddress = z.object({ approvalId: z.uuid() });

export const invitationSchema = z.strictObject({
  email: z
    .email('write an e-mail address such as ana@example.org')
    .max(200, 'at most 200 letters')
    .transform((email) => email.toLowerCase()),
  role,
});
export const invitationAct = z.strictObject({
  do: z.enum(['renew', 'withdraw', 'restore'], 'must be renew, withdraw or restore'),
});
export const roleSchema = z.strictObject({ role });
export const goingSchema = z.strictObject({
  /** Who takes the clients; needed while there are any. */
  clientsTo: z.preprocess((value) => (value === '' ? null : value), member.nullable()).default(null),
  note,
});
export const leavesSchema = z.strictObject({
  acts: z
    .array(z.enum(PREPARED_ACTS, 'must be answer, step or plan'))
    .transform((acts) => [...new Set(acts)]),
});
export const returnSchema = z.strictObject({ moveIds: z.array(z.uuid()).max(1_000).default([]) });
export const moveSchema = z.strictObject({ clientIds, toId: member, note });
export const movesUndone = z.strictObject({ moveIds: z.array(z.uuid()).min(1).max(1_000) });
export const coverSchema = z
  .strictObject({ memberId: member, coveredById: member, from: date, to: date })
  .refine((cover) => cover.from <= cover.to, { path: ['to'], message: 'is before the first day' })
  .refine((cover) => cover.memberId !== cover.coveredById, {
    path: ['coveredById'],
    message: 'nobody covers for themselves: choose another coach',
  });
export type CoverInput = z.output<typeof coverSchema>;

/** `body`: the act as the coach changed it; absent: as it was prepared. */
export const approvalDecision = z.discriminatedUnion(
  'decision',
  [
    z.strictObject({ decision: z.literal('approve'), body: z.unknown().optional() }),
    z.strictObject({
      decision: z.literal('send-back'),
      words: plainText.refine((text) => text !== '', 'say what to change'),
    }),
    z.strictObject({ decision: z.literal('undo') }),
  ],
  { error: 'decision must be approve, send-back or undo' },
);

export const joinTeamSchema = z.strictObject({
  token: z.string('token must be a text').max(200, 'token must have at most 200 characters'),
  name: z.string().trim().min(1, 'write your name').max(120, 'at most 120 letters'),
  password: z
    .string('write a password')
    .min(12, 'is shorter than 12 characters: take a longer one')
    .max(128, 'at most 128 characters'),
  zone: z.string().refine(isZone, 'choose a time zone from the list').catch('UTC'),
});
