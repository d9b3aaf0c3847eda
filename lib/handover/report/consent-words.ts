import type { RecordConsent } from '#lib/domain/record.ts';
import type { ReportInput } from './input.ts';
import { dayOf } from './say.ts';

const KIND_WORDS: Record<string, string> = {
  'health-data': 'keeping health data',
  'share-with-next-coach': 'handing the record on',
};

/** How the consents stand, in one sentence. */
export function consentInWords({ record, history }: Pick<ReportInput, 'record' | 'history'>): string {
  const { zone } = history.client;
  const said = Object.entries(KIND_WORDS).map(([kind, words]) => {
    const newest = record.consents.filter((one) => one.kind === kind).at(-1);
    return newest ? `${words}: ${stateOf(newest, zone)}` : `${words}: none is recorded`;
  });
  return said.join('; ');
}

function stateOf(consent: RecordConsent, zone: string): string {
  const { givenBy, textVersion } = consent;
  const given = `given ${dayOf(consent.givenAt, zone)} by ${givenBy} (text version ${textVersion})`;
  return consent.withdrawnAt === null
    ? given
    : `${given}, not in force since ${dayOf(consent.withdrawnAt, zone)}`;
}
