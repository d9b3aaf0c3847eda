import { PAGE_DAYS } from './client-axis.ts';

/** A ladder as it is drawn: on each side the levels it was on, oldest first. */
type Drawn = { paths: readonly { steps: readonly { level: number }[] }[] };

/** How often the client moved inside the axis, each side counted, in one sentence; undefined without a ladder. */
export function movesInWords(panels: readonly Drawn[]): string | undefined {
  if (panels.length === 0) return undefined;
  let up = 0;
  let back = 0;
  for (const { paths } of panels) {
    for (const { steps } of paths) {
      steps.forEach((step, index) => {
        const before = steps[index - 1];
        if (before && step.level > before.level) up += 1;
        if (before && step.level < before.level) back += 1;
      });
    }
  }
  const on = `On ${panels.length} ${panels.length === 1 ? 'ladder' : 'ladders'}`;
  return `${on}; in these ${PAGE_DAYS} days ${up} ${up === 1 ? 'step' : 'steps'} up and ${back} back, each side counted.`;
}
