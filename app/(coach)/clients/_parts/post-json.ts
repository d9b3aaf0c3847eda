export type Answer =
  | { ok: true; value: unknown }
  | { ok: false; message: string; fields: Record<string, string> };

/** Sends JSON to a route of ours and reads its answer or its refusal. */
export async function postJson(url: string, body: unknown): Promise<Answer> {
  try {
    const response = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    const value: unknown = response.status === 204 ? null : await response.json();
    if (response.ok) return { ok: true, value };
    return refusalOf(value);
  } catch {
    return {
      ok: false,
      message: 'No connection. Nothing was sent; what you typed is still here. Try again.',
      fields: {},
    };
  }
}

/** The text under `key` of an answer, or an empty string. */
export function textIn(value: unknown, key: string): string {
  const found = isRecord(value) ? value[key] : undefined;
  return typeof found === 'string' ? found : '';
}

/** A refusal of a route, as it came. */
export function refusalOf(value: unknown): Answer {
  const error = isRecord(value) && isRecord(value.error) ? value.error : {};
  const fields = isRecord(error.fields) ? error.fields : {};
  return {
    ok: false,
    message: textIn(error, 'message') || 'This was not saved. What you typed is still here. Try again.',
    fields: Object.fromEntries(Object.entries(fields).map(([path, message]) => [path, String(message)])),
  };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
