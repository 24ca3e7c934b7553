const TURN_DEG = 360;
const SQUARE: Readonly<Record<number, string>> = { 0: 'medial', 90: 'cranial', [-90]: 'caudal', 180: 'lateral' };

/** A direction about the bone, as screen and paper say it: `medial`, `20° cranial of medial`. Any number of degrees. */
export function directionWords(aboutDeg: number): string {
  const turned = ((((aboutDeg + 180) % TURN_DEG) + TURN_DEG) % TURN_DEG) - 180;
  const deg = turned === -180 ? 180 : turned;
  const word = SQUARE[deg];
  if (word) return word;
  const isMedial = Math.abs(deg) < 90;
  const off = isMedial ? Math.abs(deg) : 180 - Math.abs(deg);
  return `${off.toFixed(0)}° ${deg > 0 ? 'cranial' : 'caudal'} of ${isMedial ? 'medial' : 'lateral'}`;
}
