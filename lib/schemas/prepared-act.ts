import { z } from 'zod';
import { boardAct } from './board.ts';
import { filmAskSchema } from './clip.ts';
import { lookAct } from './looking.ts';
import { planSchema } from './plan.ts';
import type { PreparedAct } from './team.ts';

const uuid = z.uuid({ error: 'must be an id' });
const answer = boardAct.refine((body) => body.act === 'answer', 'must be an answer');
const step = boardAct.refine((body) => body.act === 'take', 'must take a step');

/** What each kind of prepared act holds: exactly what its route takes. */
export const PREPARED_BODY = {
  answer,
  step,
  plan: planSchema,
  film: lookAct,
  'ask-film': filmAskSchema,
} as const satisfies Record<PreparedAct | 'ask-film', z.ZodType>;

/** What stood when an act was prepared, and what an undo needs once it was approved. Kept as JSON. */
export const approvalContext = z.object({
  /** Reasons that were open: one that is new since may change what is right. */
  reasonIds: z.array(uuid).default([]),
  planUndo: z
    .object({
      version: z.int(),
      placements: z.array(
        z.object({
          ladderId: uuid,
          side: z.enum(['both', 'left', 'right']),
          rungId: uuid,
          from: z.string(),
          why: z.string(),
        }),
      ),
      goals: z.array(z.object({ id: uuid, wantedBy: z.string().nullable(), endedOn: z.string().nullable() })),
    })
    .optional(),
});
export type ApprovalContext = z.output<typeof approvalContext>;
