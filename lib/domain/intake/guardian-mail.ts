import { isAtOnce } from '../caution.ts';
import type { DangerSign, PainKind } from '../vocabulary.ts';

/** From this joint or tendon score on a parent or guardian is told (0-10). Rule of this product for under 18. */
const GUARDIAN_FROM = 4;

export type ToldPain = {
  pain: readonly { value: number; kind: PainKind }[];
  dangerSigns: readonly { sign: DangerSign }[];
};

/** Danger signs, and joint or tendon pain of 4 or more. */
export function isForGuardians({ pain, dangerSigns }: ToldPain): boolean {
  return dangerSigns.length > 0 || pain.some(({ kind, value }) => kind === 'joint' && value >= GUARDIAN_FROM);
}

/**
 * What a parent or guardian is told of what a client under 18 told: that there is a danger sign or pain of 4 or more, and
 * what to do. No place, no score, no name of a sign: a mail is read by others. Undefined: nothing to tell.
 */
export function guardianMail(
  told: ToldPain,
  { client, coach, link }: { client: string; coach: string; link: string },
): { subject: string; text: string } | undefined {
  if (!isForGuardians(told)) return undefined;
  const { dangerSigns } = told;
  const what = dangerSigns.length > 0 ? 'a danger sign' : `pain of ${GUARDIAN_FROM} or more of 10`;
  const todo = dangerSigns.some(({ sign }) => isAtOnce(sign))
    ? `Ask ${client} now. What was told can be urgent: stop training and get medical help at once. Do not wait for an answer of the coach.`
    : `Ask ${client} how it is. The work that brings it on stops, and a licensed clinician looks at it before it goes on.`;
  return {
    subject: `${client} told their coach of ${what}`,
    text: `${client} told ${coach} today of ${what}.\n\n${todo}\n\nThis is no diagnosis, and local rules on who may advise come first. ${coach} sees it too.\n\nWhat you agreed to, and how to take it back:\n${link}\n`,
  };
}
