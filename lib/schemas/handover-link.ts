import { z } from 'zod';
import { PACK_PARTS } from '#lib/handover/pack-content.ts';
import { plainText } from './plain-text.ts';

/** Longest life of a link; own choice. */
export const LINK_DAYS = { least: 1, most: 30, usual: 14 } as const;
/** How far back a link shows; null: from the first day on. */
export const LINK_PERIODS = { quarter: 91, 'half-year': 182, year: 365, all: null } as const;
type LinkPeriod = keyof typeof LINK_PERIODS;
const PERIODS = Object.keys(LINK_PERIODS) as [LinkPeriod, ...LinkPeriod[]];

/** Of a pack behind a link; notes private to coaches are never in it. */
export const LINK_PARTS = PACK_PARTS.filter((part) => part !== 'notes');

const upTo = (most: number) => plainText.refine((text) => text.length <= most, `at most ${most} letters`);

export const makeLinkSchema = z.strictObject({
  forWhom: upTo(120).refine((text) => text !== '', 'say who is to read it, by name'),
  why: upTo(2_000).refine(
    (text) => text !== '',
    'say why they are to read it: it stands in the record of acts',
  ),
  days: z.coerce
    .number('must be a whole number of days')
    .int('must be a whole number of days')
    .min(LINK_DAYS.least, `must be at least ${LINK_DAYS.least} day`)
    .max(LINK_DAYS.most, `must be at most ${LINK_DAYS.most} days`),
  period: z.enum(PERIODS, 'must be one of the periods shown'),
  summary: upTo(4_000).default(''),
  withPack: z.boolean().default(false),
  parts: z.array(z.enum(LINK_PARTS)).max(LINK_PARTS.length).default([]),
});
export type MakeLink = z.infer<typeof makeLinkSchema>;

/** What a link that ends needs to be opened: its own token, and the code that came another way. */
export const openLinkSchema = z.object({
  token: z.string().regex(/^[\w-]{32}$/, 'is not whole: open the link again as it was sent'),
  code: z
    .string()
    .transform((code) => code.replace(/[\s-]/g, ''))
    .refine((code) => /^[0-9]{6}$/.test(code), 'has six digits: look again at what was sent to you'),
});
export type OpenLink = z.infer<typeof openLinkSchema>;

export const linkAddress = z.object({ clientId: z.uuid(), linkId: z.uuid() });
