import type { Report } from './blocks.ts';
import { decisionsSection } from './decisions-section.ts';
import { firstPage } from './first-page.ts';
import type { ReportInput } from './input.ts';
import { lifeSection } from './life-section.ts';
import { loadSection } from './load-section.ts';
import { painSection } from './pain-section.ts';
import { day } from './say.ts';
import { trainingSection } from './training-section.ts';

/** The whole report: the first page, then pain, load, ladders and sides, decisions, life and the log. */
export function reportOf(input: ReportInput): Report {
  const { history, period, about, made } = input;
  return {
    title: `Handover of ${history.client.name}, ${day(period.from)} to ${day(period.to)}`,
    subject: 'A client’s training record for the next coach or a clinician',
    author: about.team,
    made,
    foot: `${history.client.name}. Made ${made.toISOString().slice(0, 16).replace('T', ' ')} UTC. Informs, does not diagnose.`,
    blocks: [
      ...firstPage(input),
      { kind: 'new-page' },
      ...painSection(input),
      ...loadSection(input),
      ...trainingSection(input),
      ...decisionsSection(input),
      ...lifeSection(input),
    ],
  };
}
