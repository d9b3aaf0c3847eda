import { type Angle, type Drawn, drawnAngle, leanOfLine, placingSpread } from '#lib/balance/drawn-lines.ts';
import type { Point } from '#lib/balance/landmarks.ts';
import type { Plumb } from '#lib/balance/set-up.ts';
import { toErrorPlace } from '#lib/balance/still-errors.ts';

/** What can be moved over a film. `line`: the plumb line as a whole. */
export const HANDLES = [
  'line',
  'line top',
  'line bottom',
  'angle middle',
  'angle one',
  'angle other',
] as const;
export type Handle = (typeof HANDLES)[number];
export const HANDLE_LABELS: Record<Handle, string> = {
  line: 'plumb line',
  'line top': 'its top end',
  'line bottom': 'its bottom end',
  'angle middle': 'point of the angle',
  'angle one': 'first end',
  'angle other': 'second end',
};
export type Size = { width: number; height: number };
/** Pixels of the film; null: not drawn. */
export type Drawing = { line: Plumb | null; angle: Angle | null };
export const NOTHING_DRAWN: Drawing = { line: null, angle: null };

/** A line that hangs straight in the middle of the picture. */
export function firstLine({ width, height }: Size): Plumb {
  const x = Math.round(width / 2);
  return { top: { x, y: Math.round(height * 0.05) }, bottom: { x, y: Math.round(height * 0.95) } };
}

/** A right angle in the middle of the picture, to be moved. */
export function firstAngle({ width, height }: Size): Angle {
  const arm = Math.round(Math.min(width, height) / 5);
  const at = { x: Math.round(width / 2), y: Math.round(height / 2) };
  return { at, a: { x: at.x, y: at.y - arm }, b: { x: at.x + arm, y: at.y } };
}

export function handlesOf({ line, angle }: Drawing): Handle[] {
  return HANDLES.filter((handle) => (handle.startsWith('line') ? line !== null : angle !== null));
}

/** Where a handle stands; the line as a whole has its handle in its middle. */
export function handleAt({ line, angle }: Drawing, handle: Handle): Point | undefined {
  if (handle === 'line')
    return line ? { x: (line.top.x + line.bottom.x) / 2, y: (line.top.y + line.bottom.y) / 2 } : undefined;
  if (handle === 'line top') return line?.top;
  if (handle === 'line bottom') return line?.bottom;
  if (handle === 'angle middle') return angle?.at;
  return handle === 'angle one' ? angle?.a : angle?.b;
}

/** The same with one handle somewhere else, inside of the picture. */
export function handleMoved(drawing: Drawing, handle: Handle, to: Point, size: Size): Drawing {
  const { line, angle } = drawing;
  const point = { x: within(to.x, size.width), y: within(to.y, size.height) };
  if (handle === 'line') {
    const from = handleAt(drawing, 'line');
    if (!line || !from) return drawing;
    const across = point.x - from.x;
    const shifted = ({ x, y }: Point) => ({ x: within(x + across, size.width), y });
    return { ...drawing, line: { top: shifted(line.top), bottom: shifted(line.bottom) } };
  }
  if (handle === 'line top' || handle === 'line bottom') {
    if (!line) return drawing;
    return { ...drawing, line: { ...line, [handle === 'line top' ? 'top' : 'bottom']: point } };
  }
  if (!angle) return drawing;
  const which = handle === 'angle middle' ? 'at' : handle === 'angle one' ? 'a' : 'b';
  return { ...drawing, angle: { ...angle, [which]: point } };
}

/** The line hanging straight again, where its bottom end stands. */
export function hungStraight(drawing: Drawing): Drawing {
  const { line } = drawing;
  if (!line) return drawing;
  return { ...drawing, line: { top: { x: line.bottom.x, y: line.top.y }, bottom: line.bottom } };
}

/** "142° ± 3°", no more exact than placing allows. */
export function angleInWords(angle: Angle, { height }: Size): string {
  return (
    inDegrees(drawnAngle(angle, placingSpread(height))) ?? 'no angle: two of the points lie on each other'
  );
}

/** "hangs straight in the picture", "leans 1.4° ± 0.4° to the right in the picture". */
export function lineInWords(line: Plumb, { height }: Size): string {
  if (line.top.x === line.bottom.x) return 'hangs straight in the picture';
  const lean = leanOfLine(line, placingSpread(height));
  if (!lean) return 'has no length';
  const side = lean.degrees > 0 ? 'right' : 'left';
  return `leans ${inDegrees({ ...lean, degrees: Math.abs(lean.degrees) })} to the ${side} in the picture`;
}

function inDegrees(drawn: Drawn | undefined): string | undefined {
  if (!drawn) return undefined;
  const { degrees, error } = drawn;
  const shown = Math.max(error, 0.1);
  return `${toErrorPlace(degrees, shown)}° ± ${toErrorPlace(shown, shown)}°`;
}

function within(value: number, most: number): number {
  return Math.round(Math.max(0, Math.min(most, value)) * 10) / 10;
}
