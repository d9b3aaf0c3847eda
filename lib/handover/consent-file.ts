import { consentText as textOf } from '#lib/domain/consent.ts';
import type { ReportInput } from './report/input.ts';

const KIND_WORDS: Readonly<Record<string, string>> = {
  'health-data': 'That health data is kept and read',
  'share-with-next-coach': 'That the record is handed on',
};

/** consent.txt: who agreed to what, when, in which words; what is not recorded is said to be not recorded. */
export function consentText({
  record,
  about,
  history,
}: Pick<ReportInput, 'record' | 'about' | 'history'>): string {
  const lines = record.consents.flatMap((one) => [
    `${KIND_WORDS[one.kind] ?? one.kind}: given ${one.givenAt} by ${one.givenBy}, text version ${one.textVersion}${one.withdrawnAt ? `; not in force since ${one.withdrawnAt}` : ''}.`,
  ]);
  const missing = Object.keys(KIND_WORDS).filter((kind) => !record.consents.some((one) => one.kind === kind));
  const versions = [...new Set(record.consents.map((one) => one.textVersion))];
  return [
    `Consents of ${history.client.name}`,
    '',
    ...(lines.length > 0 ? lines : ['No consent is recorded.']),
    ...missing.map(
      (kind) => `${KIND_WORDS[kind]}: no consent is recorded. Ask before the record goes further.`,
    ),
    '',
    ...versions.flatMap((version) => wordsOf(version, about.team)),
  ]
    .map((line) => `${line}\r\n`)
    .join('');
}

function wordsOf(version: string, team: string): string[] {
  const found = textOf(version, team);
  if (!found) return [`Text version ${version}: its words are not known to this program.`, ''];
  return [
    `Text version ${version}, as it was shown:`,
    ...found.health.map((line) => `- ${line}`),
    `- ${found.share}`,
    '',
  ];
}
