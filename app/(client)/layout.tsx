import type { ReactNode } from 'react';
import '#app/_ui/tokens.css';
import './client.css';

export default function ClientLayout({ children }: { children: ReactNode }) {
  return children;
}
