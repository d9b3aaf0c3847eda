import type { TeamPg } from '#lib/db/client.ts';
import { holdsConsent } from '#lib/db/consents.ts';
import { CONSENT_VERSION } from '#lib/domain/consent.ts';
import { AppError } from '#lib/errors.ts';

/** Refuses to keep anything about a client's health without the consent to the text in force. */
export async function assertConsent(tx: TeamPg, clientId: string): Promise<void> {
  assertConsented(await holdsConsent(tx, clientId, CONSENT_VERSION));
}

/** The same where it was asked already. */
export function assertConsented(holds: boolean): void {
  if (holds) return;
  throw new AppError(
    'consent-needed',
    'Nothing is kept without your consent. Open Today: it asks for it first. What is on this phone stays there until then.',
  );
}
