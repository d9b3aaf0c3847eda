import { z } from 'zod';

const refusal = z.object({
  error: z.object({ message: z.string(), fields: z.record(z.string(), z.string()) }),
});

/** An answer to a form posted without scripts: what was refused, in words a person reads; anything else as it is. */
export async function refusedPage(answer: Response): Promise<Response> {
  if (answer.status < 400) return answer;
  const { error } = refusal.parse(await answer.json());
  const reasons = Object.entries(error.fields).map(([field, why]) => `${field}: ${why}`);
  const lines = (reasons.length > 0 ? reasons : [error.message]).map((line) => `<li>${escaped(line)}</li>`);
  const headers = new Headers(answer.headers);
  headers.set('content-type', 'text/html; charset=utf-8');
  return new Response(
    `<!doctype html><html lang="en"><meta name="viewport" content="width=device-width"><title>Not kept</title><h1>Not kept yet</h1><p>Nothing was saved. Go back: what you wrote is still in the form. To change:</p><ul>${lines.join('')}</ul></html>`,
    { status: answer.status, headers },
  );
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
