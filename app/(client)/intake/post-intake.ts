import type { Caution } from '#lib/domain/caution.ts';
import type { IntakeDraft } from '#lib/domain/intake/draft.ts';

export type Answer<Body> =
  | { ok: true; body: Body }
  | { ok: false; status: number | null; message: string; fields: Record<string, string> };

const PATIENCE_MS = 20_000;

/** Posts and reads the answer; `status` null: there was no connection. */
async function post<Body>(address: string, body: object): Promise<Answer<Body>> {
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (response.ok) return { ok: true, body: (await response.json()) as Body };
    const refused = (await response.json().catch(() => null)) as {
      error?: { message?: string; fields?: Record<string, string> };
    } | null;
    return {
      ok: false,
      status: response.status,
      message:
        refused?.error?.message ??
        `The server answered ${response.status}. What you told is kept; try again.`,
      fields: refused?.error?.fields ?? {},
    };
  } catch {
    const message =
      'Not sent: no connection. What you told is kept on this phone; it is sent when there is signal.';
    return { ok: false, status: null, message, fields: {} };
  }
}

export const postDraft = (draft: IntakeDraft) => post<{ draft: IntakeDraft }>('/api/intake/draft', { draft });
export const postIntake = (key: string, draft: IntakeDraft) =>
  post<{ sentAt: string; cautions: Caution[] }>('/api/intake', { key, draft });
