'use client';
import { createContext, type ReactNode, useContext } from 'react';

const Prepares = createContext(false);

/** Who looks prepares acts for a coach to approve: answers and steps, nothing else. */
export function PreparesActs({ on, children }: { on: boolean; children: ReactNode }) {
  return <Prepares.Provider value={on}>{children}</Prepares.Provider>;
}

export function usePrepares(): boolean {
  return useContext(Prepares);
}
