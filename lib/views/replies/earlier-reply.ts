import { localDateOf } from '#lib/domain/local-date.ts';
import { datedDay } from '../say-date.ts';
import type { EarlierReply } from './reply-types.ts';

type Answer = { id: string; question: string; text: string; by: string; at: Date; client: string };

/** An earlier answer as it is shown, with who wrote it to whom and when, in the zone of the coach who reads. */
export function earlierReply(answer: Answer, { zone, today }: { zone: string; today: string }): EarlierReply {
  const { id, question, text, by, client } = answer;
  const on = datedDay(localDateOf(answer.at, zone), today);
  return { id, question, text, who: `${by} to ${client}, ${on}` };
}
