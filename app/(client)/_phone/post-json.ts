/** Posts and answers null when it arrived, else what happened, what is kept and what to do. */
export async function postJson(address: string, body: object): Promise<string | null> {
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(20_000),
    });
    if (response.ok) return null;
    const answer = (await response.json().catch(() => null)) as { error?: { message?: string } } | null;
    return (
      answer?.error?.message ??
      `Not sent: the server answered ${response.status}. What you wrote is still here; try again.`
    );
  } catch {
    return 'Not sent: no connection. What you wrote is still here; try again when there is signal.';
  }
}
