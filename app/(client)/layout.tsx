import type { ReactNode } from 'react';
import { RegisterWorker } from './_phone/register-worker.tsx';
import './_styles/client.css';
import './_styles/acts.css';
import './_styles/today.css';
import './_styles/fields.css';
import './_styles/drill-acts.css';
import './_styles/timers.css';
import './_styles/stills.css';
import './_styles/pain.css';
import './_styles/sent.css';
import './_styles/progress.css';
import './_styles/limits.css';
import './_styles/plain.css';
import './_styles/notices.css';
import './_styles/rights.css';
import './_styles/intake.css';

export default function ClientLayout({ children }: { children: ReactNode }) {
  return (
    <>
      <RegisterWorker />
      {children}
    </>
  );
}
