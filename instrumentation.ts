/** Runs once when the pages' server starts. Next closes the server by itself; here it says so to whoever still asks. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { markStopping } = await import('#lib/stopping.ts');
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, markStopping);
}
