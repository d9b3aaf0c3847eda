import type { CSSProperties } from 'react';
import { PAGE_DAYS } from '#lib/views/client-axis.ts';

/** A day of the axis as a share of the plot's width. */
export function atDay(day: number): string {
  return `${(day / PAGE_DAYS) * 100}%`;
}

/** A value as a share of the plot's height, 0 at the foot. */
export function atValue(value: number, top: number): string {
  return `${(1 - value / top) * 100}%`;
}

/** A rung's level as a share of the ladder's height. */
export function atLevel(level: number, rungs: number): string {
  return `${(1 - (level + 0.5) / rungs) * 100}%`;
}

/** The height of a panel's side and labels; one column lets it go. */
export function heightOf(px: number): CSSProperties {
  return { ['--high' as string]: `${px}px` };
}
