import type { Tissue } from '#lib/domain/vocabulary.ts';
import type { RungForm } from '#lib/views/ladders/rung-form.ts';

/** What every part of the rung form gets. `error` takes the path of a field, as a refusal names it. */
export type RungPartProps = {
  form: RungForm;
  error: (path: string) => string | undefined;
  onChange: (patch: Partial<RungForm>) => void;
};

export type SwapOfForm = RungForm['swaps'][number];
export type SwapChoice = {
  id: string;
  name: string;
  ladder: string;
  weights: Partial<Record<Tissue, number>>;
};
