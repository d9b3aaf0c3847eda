import { z } from 'zod';

const refusal = z.object({
  error: z.object({ message: z.string(), fields: z.record(z.string(), z.string()) }),
});
const FIELD =
  'display:block;box-sizing:border-box;width:100%;min-height:48px;margin:4px 0 16px;padding:8px;font:inherit';

/**
 * An answer to a form posted without scripts. A refusal becomes a page with the form again: what was wrong as fields to
 * change, everything else kept as it was. Any other answer stays as it is.
 */
export async function refusedPage(answer: Response, action: string, posted: Request): Promise<Response> {
  if (answer.status < 400) return answer;
  const { error } = refusal.parse(await answer.json());
  // Only what was read whole can be shown again; a body that was too long is not.
  const fields = answer.status === 400 ? new URLSearchParams(await posted.text()) : new URLSearchParams();
  const wrong = Object.entries(error.fields);
  const named = new Set(wrong.map(([name]) => name));
  const kept = [...fields].filter(([name]) => !named.has(name));
  const asked = wrong.map(
    ([name, why]) =>
      `<label>${escaped(`${labelOf(name, fields)}: ${why}`)}<input style="${FIELD}" name="${escaped(name)}" value="${escaped(fields.get(name) ?? '')}"></label>`,
  );
  const hidden = kept.map(
    ([name, value]) => `<input type="hidden" name="${escaped(name)}" value="${escaped(value)}">`,
  );
  const form = `<form action="${action}" method="post">${asked.join('')}${hidden.join('')}<button style="${FIELD}">Send again</button></form>`;
  const headers = new Headers(answer.headers);
  headers.set('content-type', 'text/html; charset=utf-8');
  return new Response(
    `<!doctype html><html lang="en"><head><meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark"><title>Not kept yet</title></head><body style="max-width:560px;margin:0 auto;padding:16px;font:17px/1.4 sans-serif"><main><h1>Not kept yet</h1><p>${wrong.length > 0 ? 'Change this and send it again; the rest of what you wrote is kept below it, unseen.' : escaped(error.message)}</p>${form}<p><a href="/today">Back to Today</a></p></main></body></html>`,
    { status: answer.status, headers },
  );
}

/** A form may send what a field is called beside it: `label X` for `value X`. */
function labelOf(name: string, fields: URLSearchParams): string {
  return fields.get(name.replace(/^value /, 'label ')) || name;
}

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
