import type { ReactNode } from 'react';
import { Tabs } from '../_phone/tabs.tsx';

export default function TabsLayout({ children }: { children: ReactNode }) {
  return (
    <div className="phone">
      {children}
      <Tabs />
    </div>
  );
}
