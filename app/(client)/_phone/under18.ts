'use client';
import { createContext, useContext } from 'react';

/** Whether the client is under 18: cautions come one step sooner. */
export const Under18 = createContext(false);

export function useUnder18(): boolean {
  return useContext(Under18);
}
