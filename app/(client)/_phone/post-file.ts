/** Uploads a file as it is; answers null when it arrived, else what happened and what to do. */
export async function postFile(address: string, file: File): Promise<string | null> {
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: file,
      signal: AbortSignal.timeout(90_000),
    });
    if (response.ok) return null;
    const answer = (await response.json().catch(() => null)) as { error?: { message?: string } } | null;
    return answer?.error?.message ?? `Not sent: the server answered ${response.status}. Try again.`;
  } catch {
    return 'Not sent: no connection. It is still chosen; try again when there is signal.';
  }
}
