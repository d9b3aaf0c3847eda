import type { AnswerStartTest } from '#lib/schemas/start-tests.ts';
import { postJson } from '../_phone/post-json.ts';
import { read, remove, write } from '../_phone/storage.ts';

export type Unsent = { key: string; body: AnswerStartTest; problem: string | null };

const unsentName = (testsId: string) => `start-tests:${testsId}`;
const draftName = (testsId: string, key: string) => `start-tests:${testsId}:${key}`;

/** Answers that have not arrived yet, oldest first; a later one about the same test takes the place of the earlier. */
export function unsentAnswers(testsId: string): Unsent[] {
  return read<Unsent[]>(unsentName(testsId)) ?? [];
}

export function keepAnswer(testsId: string, key: string, body: AnswerStartTest): boolean {
  const others = unsentAnswers(testsId).filter((one) => one.key !== key);
  return write(unsentName(testsId), [...others, { key, body, problem: null }]);
}

/** Sends what waits, in order; stops at the first that does not arrive. True when nothing waits any more. */
export async function sendAnswers(testsId: string): Promise<boolean> {
  for (const one of unsentAnswers(testsId)) {
    const problem = await postJson('/api/start-tests', one.body);
    const left = unsentAnswers(testsId);
    if (problem !== null) {
      const marked = left.map((each) => (each.key === one.key ? { ...each, problem } : each));
      write(unsentName(testsId), marked);
      return false;
    }
    // What was changed meanwhile stays and is sent next.
    const still = left.filter(
      (each) => each.key !== one.key || JSON.stringify(each.body) !== JSON.stringify(one.body),
    );
    if (still.length > 0) write(unsentName(testsId), still);
    else remove(unsentName(testsId));
  }
  return unsentAnswers(testsId).length === 0;
}

export function dropAnswer(testsId: string, key: string): void {
  const left = unsentAnswers(testsId).filter((one) => one.key !== key);
  if (left.length > 0) write(unsentName(testsId), left);
  else remove(unsentName(testsId));
}

/** A test that is being filled in: kept at every change. */
export function loadTestDraft<Draft>(testsId: string, key: string): Draft | null {
  return read<Draft>(draftName(testsId, key));
}
export function saveTestDraft(testsId: string, key: string, draft: object | null): void {
  if (draft === null) remove(draftName(testsId, key));
  else write(draftName(testsId, key), draft);
}
