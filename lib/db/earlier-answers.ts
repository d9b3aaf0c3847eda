import type { TeamPg } from './client.ts';

export type EarlierAnswer = {
  id: string;
  question: string;
  text: string;
  by: string;
  at: Date;
  clientId: string;
  client: string;
};

const TOLD = `a.id, q.text as question, a.text, m.name as by, a.created_at as at, c.id as "clientId", c.name as client`;
const JOINS = `join answer a on a.team_id = $1 and a.id = f.answer_id
  join question q on q.team_id = a.team_id and q.id = a.question_id
  join client c on c.team_id = q.team_id and c.id = q.client_id
  join member m on m.team_id = a.team_id and m.id = a.by_id`;

/** Answers whose question and answer hold all these words in any of their forms, best first. */
export async function findEarlierAnswers(tx: TeamPg, words: string, most: number): Promise<EarlierAnswer[]> {
  const { rows } = await tx.client.query<EarlierAnswer>(
    `select ${TOLD} from earlier_answers($2, false, $3) f ${JOINS} order by f.rank desc, a.created_at desc, a.id`,
    [tx.teamId, words, most],
  );
  return rows;
}

/** Earlier answers to what these waiting questions ask, by the words they share; `most` for each. */
export async function listAnswersLike(
  tx: TeamPg,
  questionIds: readonly string[],
  most: number,
): Promise<Map<string, EarlierAnswer[]>> {
  const { rows } = await tx.client.query<EarlierAnswer & { asked: string }>(
    `select w.id as asked, ${TOLD} from question w cross join lateral earlier_answers(w.text, true, $3) f ${JOINS}
     where w.team_id = $1 and w.id = any($2::uuid[]) order by w.id, f.rank desc, a.created_at desc, a.id`,
    [tx.teamId, questionIds, most],
  );
  const found = new Map<string, EarlierAnswer[]>();
  for (const { asked, ...answer } of rows) {
    const list = found.get(asked);
    if (list) list.push(answer);
    else found.set(asked, [answer]);
  }
  return found;
}
