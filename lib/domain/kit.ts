/** What the hands hold: where a drill names several, any one will do. */
const FOR_THE_HANDS: readonly string[] = ['hard-floor', 'parallel-bars', 'bar', 'rings'];
/** What every room has; a folded blanket is a mat. Own choice. */
const ALWAYS_THERE: readonly string[] = ['wall', 'mat'];

/**
 * The kit a drill needs beyond a room with a floor and a wall, in words: ["bar or rings", "box"]. Empty: it can be done
 * anywhere.
 */
export function kitNeeded(equipment: readonly string[]): string[] {
  const hold = equipment.filter((one) => FOR_THE_HANDS.includes(one));
  const others = equipment.filter((one) => !FOR_THE_HANDS.includes(one) && !ALWAYS_THERE.includes(one));
  const held = hold.length === 0 || hold.includes('hard-floor') ? [] : [hold.map(inWords).join(' or ')];
  return [...held, ...others.map(inWords)];
}

function inWords(name: string): string {
  return name.replaceAll('-', ' ');
}
