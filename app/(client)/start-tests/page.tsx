import type { Metadata } from 'next';
import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadOwnTests } from '#lib/usecases/start/load-own-tests.ts';
import { BackHead } from '../_phone/back-head.tsx';
import './start-tests.css';
import { TestsScreen } from './tests-screen.tsx';

export const metadata: Metadata = { title: 'Start tests' };

export default async function StartTestsPage() {
  const actor = await requireActor('check-in');
  const asked = await loadOwnTests(actor, now());
  return (
    <div className="phone">
      <BackHead to="/today" page="Today">
        {asked?.team ?? ''}
      </BackHead>
      {asked ? (
        <TestsScreen key={asked.testsId} asked={asked} />
      ) : (
        <main>
          <h1>Start tests</h1>
          <p>Your coach asks for none now.</p>
          <p>
            <Link className="word-act" href="/today">
              Back to Today
            </Link>
          </p>
        </main>
      )}
    </div>
  );
}
