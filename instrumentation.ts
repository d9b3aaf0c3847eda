/** Runs once when the pages' server starts. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME === 'nodejs') (await import('#lib/stopping.ts')).markAtSignals();
}
