import {
  type Angle,
  type Drawn,
  drawnAngle,
  type Hands,
  helpedPart,
  leanOfLine,
  placingSpread,
} from '#lib/balance/drawn-lines.ts';
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
  'carrying hand',
  'helping hand',
] as const;
export type Handle = (typeof HANDLES)[number];
export const HANDLE_LABELS: Record<Handle, string> = {
  line: 'plumb line',
  'line top': 'its top end',
  'line bottom': 'its bottom end',
  'angle middle': 'point of the angle',
  'angle one': 'first end',
  'angle other': 'second end',
  'carrying hand': 'hand that carries',
  'helping hand': 'hand that helps',
};
export type Size = { width: number; height: number };
/** Pixels of the film; null: not drawn. */
export type Drawing = { line: Plumb | null; angle: Angle | null; hands: Hands | null };
export const NOTHING_DRAWN: Drawing = { line: null, angle: null, hands: null };

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

/** Two hands on the ground, left and right of the middle, to be moved. */
export function firstHands({ width, height }: Size): Hands {
  const y = Math.round(height * 0.9);
  return { carrying: { x: Math.round(width * 0.4), y }, helping: { x: Math.round(width * 0.6), y } };
}

export function handlesOf(drawing: Drawing): Handle[] {
  return HANDLES.filter((handle) => handleAt(drawing, handle) !== undefined);
}

/** Where a handle stands; the line as a whole has its handle in its middle. */
export function handleAt({ line, angle, hands }: Drawing, handle: Handle): Point | undefined {
  if (handle === 'line')
    return line ? { x: (line.top.x + line.bottom.x) / 2, y: (line.top.y + line.bottom.y) / 2 } : undefined;
  if (handle === 'line top') return line?.top;
  if (handle === 'line bottom') return line?.bottom;
  if (handle === 'carrying hand') return hands?.carrying;
  if (handle === 'helping hand') return hands?.helping;
  if (handle === 'angle middle') return angle?.at;
  return handle === 'angle one' ? angle?.a : angle?.b;
}

/** The same with one handle somewhere else, inside of the picture. */
export function handleMoved(drawing: Drawing, handle: Handle, to: Point, size: Size): Drawing {
  const { line, angle, hands } = drawing;
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
  if (handle === 'carrying hand' || handle === 'helping hand') {
    if (!hands) return drawing;
    return { ...drawing, hands: { ...hands, [handle === 'carrying hand' ? 'carrying' : 'helping']: point } };
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

const PERCENT = 100;

/** "14 % ± 3 % of the weight on the hand that helps", by the plumb line drawn through the middle of the body. */
export function helpInWords({ line, hands }: Drawing, { height }: Size): string {
  if (!hands || !line) return 'draw the plumb line too, through the middle of the body down to the ground';
  const helped = helpedPart(hands, line.bottom.x, placingSpread(height));
  if (!helped) return 'no part: both hands stand in one place';
  const [part, error] = [helped.part * PERCENT, Math.max(helped.error * PERCENT, 1)];
  if (part < 0) return 'none on the hand that helps: the plumb line runs outside of the hand that carries';
  if (part > PERCENT)
    return 'none on the hand that carries: the plumb line runs outside of the hand that helps';
  return `${toErrorPlace(part, error)} % ± ${toErrorPlace(error, error)} % of the weight on the hand that helps`;
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
