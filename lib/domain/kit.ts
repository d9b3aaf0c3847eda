/** What the hands hold: where a drill names several, any one will do. */
const FOR_THE_HANDS: readonly string[] = ['hard-floor', 'parallel-bars', 'bar', 'rings'];
/** What every room has; a folded blanket is a mat. Own choice. */
const ALWAYS_THERE: readonly string[] = ['hard-floor', 'wall', 'mat'];

/**
 * The kit a drill needs beyond a room with a floor and a wall, in words: ["bar or rings", "box"]. Empty: it can be done
 * anywhere.
 */
export function kitNeeded(equipment: readonly string[]): string[] {
  return needs(equipment).map(inWords);
}

/**
 * The first kit of a drill that is not at hand, in words: "bar or rings". `atHand` names kit as drills do; a floor, a
 * wall and a mat are there in any case. Undefined: nothing is missing. With nothing at hand it is what `kitNeeded` says
 * first.
 */
export function kitMissing(equipment: readonly string[], atHand: readonly string[]): string | undefined {
  const missing = needs(equipment).find((anyOf) => !anyOf.some((one) => atHand.includes(one)));
  return missing && inWords(missing);
}

/** Each entry: any one of these will do. */
function needs(equipment: readonly string[]): string[][] {
  const hold = equipment.filter((one) => FOR_THE_HANDS.includes(one));
  const others = equipment.filter((one) => !FOR_THE_HANDS.includes(one) && !ALWAYS_THERE.includes(one));
  const held = hold.length === 0 || hold.some((one) => ALWAYS_THERE.includes(one)) ? [] : [hold];
  return [...held, ...others.map((one) => [one])];
}

function inWords(anyOf: readonly string[]): string {
  return anyOf.map((name) => name.replaceAll('-', ' ')).join(' or ');
}
