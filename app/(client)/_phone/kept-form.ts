import type { OtherDrill } from '#lib/views/phone-other-drills.ts';
import type { PhoneSession } from '#lib/views/phone-session.ts';
import { read, write } from './storage.ts';

/** What the check-in needs to open without signal: the plan as it was the last time this phone had some. */
export type KeptForm = {
  version: 1;
  clientId: string;
  coach: string;
  planVersion: number | null;
  usualMinutes: number | null;
  /** Forms kept by an earlier page do not say. */
  under18?: boolean | undefined;
  sessions: PhoneSession[];
  /** What can be added to them; forms kept by an earlier page have none. */
  otherDrills?: OtherDrill[] | undefined;
  /** Local date on which the phone saw it. */
  date: string;
  keptAt: string;
};

const NAME = 'form';
/** A plan that was not looked at for so long says nothing about today (own choice). */
const LONGEST_MS = 28 * 86_400_000;

/** Where nothing can be kept nothing opens without signal: the page without signal says so. */
export function saveForm(form: KeptForm): void {
  write(NAME, form);
}

export function loadForm(now: Date): KeptForm | null {
  const form = read<KeptForm>(NAME);
  const isOurs = form?.version === 1 && now.getTime() - Date.parse(form.keptAt) < LONGEST_MS;
  return isOurs ? form : null;
}
