import type { Caution } from '#lib/domain/caution.ts';
import type { IntakeDraft } from '#lib/domain/intake/draft.ts';
import { post } from '../_phone/post-json.ts';

const ON_PHONE = {
  refused: 'What you told is kept; try again.',
  offline: 'What you told is kept on this phone; it is sent when there is signal.',
};

export const postDraft = (draft: IntakeDraft) =>
  post<{ draft: IntakeDraft }>('/api/intake/draft', { draft }, ON_PHONE);
export const postIntake = (key: string, draft: IntakeDraft) =>
  post<{ sentAt: string; cautions: Caution[] }>('/api/intake', { key, draft }, ON_PHONE);
