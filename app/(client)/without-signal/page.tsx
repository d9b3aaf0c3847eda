import type { Metadata } from 'next';
import { WithoutSignal } from './without-signal.tsx';

export const metadata: Metadata = { title: 'No signal' };

/** Kept by the phone's worker and shown in place of a page that cannot be reached. Holds nothing of anybody. */
export default function WithoutSignalPage() {
  return <WithoutSignal />;
}
