import { AppError } from '#lib/errors.ts';
import { metrics } from '#lib/metrics.ts';
import { submitCheckIn } from './submit-check-in.ts';

/** A check-in from a phone, counted by what became of it. */
export const countedSubmit: typeof submitCheckIn = async (...sent) => {
  const { submits, submitSeconds } = metrics();
  const stop = submitSeconds.startTimer();
  try {
    const answer = await submitCheckIn(...sent);
    submits.inc({ outcome: 'kept' });
    return answer;
  } catch (error) {
    submits.inc({ outcome: error instanceof AppError ? error.code : 'failed' });
    throw error;
  } finally {
    stop();
  }
};
