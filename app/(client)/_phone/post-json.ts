/** `status` null: there was no connection. */
export type Answer<Body> = { ok: true; body: Body } | { ok: false; status: number | null; message: string };
/** What is kept and what to do, for an answer that says nothing itself and for no answer at all. */
export type Kept = { refused: string; offline: string };

/** Posts and reads the answer; where it did not arrive, what happened, what is kept and what to do. */
export async function post<Body>(address: string, body: object, kept: Kept): Promise<Answer<Body>> {
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(20_000),
    });
    const answer = await response.json().catch(() => null);
    if (response.ok) return { ok: true, body: answer as Body };
    const { error } = (answer ?? {}) as { error?: { message?: string } };
    const message = error?.message ?? `Not sent: the server answered ${response.status}. ${kept.refused}`;
    return { ok: false, status: response.status, message };
  } catch {
    return { ok: false, status: null, message: `Not sent: no connection. ${kept.offline}` };
  }
}

const STILL_HERE = {
  refused: 'What you wrote is still here; try again.',
  offline: 'What you wrote is still here; try again when there is signal.',
};

/** Posts what stands in a form and answers null when it arrived, else what to do. */
export async function postJson(address: string, body: object): Promise<string | null> {
  const answer = await post<unknown>(address, body, STILL_HERE);
  return answer.ok ? null : answer.message;
}
