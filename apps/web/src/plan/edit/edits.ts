/** Changes of a construct, each from a whole construct to a whole new one. Lengths in mm, angles in degrees. */
import type { Case, Construct } from '@bonewright/construct';

/** Places are kept to a tenth of a millimetre: finer than anyone can place a pin. */
const STEP_MM = 0.1;
const TURN = 360;
const MOST_TILT_DEG = 60;

export type Pin = Construct['pins'][number];

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
const toStep = (mm: number) => Math.round(mm / STEP_MM) / (1 / STEP_MM);

function withPin(construct: Construct, index: number, change: (pin: Pin) => Pin): Construct {
  return { ...construct, pins: construct.pins.map((pin, i) => (i === index ? change(pin) : pin)) };
}

export function movePinTo(construct: Construct, index: number, sMm: number, lengthMm: number): Construct {
  return withPin(construct, index, (pin) => ({ ...pin, sMm: toStep(clamp(sMm, 0, lengthMm)) }));
}

/** Turns a pin about the bone; the answer lies over -180 up to 180. */
export function turnPinTo(construct: Construct, index: number, aboutDeg: number): Construct {
  const round = Math.round(aboutDeg);
  const wrapped = ((((round + TURN / 2) % TURN) + TURN) % TURN) - TURN / 2;
  return withPin(construct, index, (pin) => ({ ...pin, aboutDeg: wrapped }));
}

export function tiltPinTo(construct: Construct, index: number, tiltDeg: number): Construct {
  const tilt = Math.round(clamp(tiltDeg, -MOST_TILT_DEG, MOST_TILT_DEG));
  return withPin(construct, index, (pin) => ({ ...pin, tiltDeg: tilt }));
}

export function changePinSize(construct: Construct, index: number, drawerId: string): Construct {
  return withPin(construct, index, (pin) => ({ ...pin, drawerId }));
}

/** A construct keeps at least one pin: the last one stays. */
export function removePin(construct: Construct, index: number): Construct {
  if (construct.pins.length < 2) return construct;
  return { ...construct, pins: construct.pins.filter((_, i) => i !== index) };
}

/** Adds a pin like its neighbour in the middle of the widest stretch that no pin crosses. */
export function addPin(construct: Construct, patientCase: Case): Construct {
  const low = patientCase.keepOut?.proximalMm ?? 0;
  const high = patientCase.bone.lengthMm - (patientCase.keepOut?.distalMm ?? 0);
  const { fromMm, toMm } = patientCase.fracture;
  const stretches = [...gaps(construct, low, fromMm), ...gaps(construct, toMm, high)];
  const widest = stretches.reduce((best, next) => (next[1] - next[0] > best[1] - best[0] ? next : best));
  const sMm = toStep((widest[0] + widest[1]) / 2);
  const neighbour = construct.pins.reduce((a, b) => (Math.abs(b.sMm - sMm) < Math.abs(a.sMm - sMm) ? b : a));
  return { ...construct, pins: inOrder([...construct.pins, { ...neighbour, sMm }]) };
}

function gaps(construct: Construct, low: number, high: number): [number, number][] {
  const inside = construct.pins.map((pin) => pin.sMm).filter((s) => s > low && s < high);
  const edges = [low, ...inside.toSorted((a, b) => a - b), high];
  return edges.slice(1).map((edge, i) => [edges[i]!, edge]);
}

/** Pins are numbered from the proximal end. */
export function inOrder(pins: readonly Pin[]): Pin[] {
  return pins.toSorted((a, b) => a.sMm - b.sMm);
}

/** Sets how far the near column stands off the skin. */
export function clearColumnBy(construct: Construct, clearanceMm: number): Construct {
  return withColumn(construct, (choice) => ({ ...choice, clearanceMm: toStep(Math.max(0, clearanceMm)) }));
}

export function changeColumn(construct: Construct, drawerId: string): Construct {
  return withColumn(construct, (choice) => ({ ...choice, drawerId }));
}

type Choice = Extract<Construct['column'], { drawerId: string }>;

function withColumn(construct: Construct, change: (choice: Choice) => Choice): Construct {
  const { column } = construct;
  return { ...construct, column: Array.isArray(column) ? column.map(change) : change(column) };
}

/** Null takes the IM pin out. */
export function changeIm(construct: Construct, im: Construct['im']): Construct {
  return { ...construct, im: im ?? null };
}

/** A first construct to start dragging from: two pins a fragment, near and far, from what the drawer has most of. */
export function startingConstruct(patientCase: Case): Construct | null {
  const pin = patientCase.drawer.pins.toSorted((a, b) => b.count - a.count)[0];
  const column = patientCase.drawer.columns[0];
  if (!pin || !column) return null;
  const low = patientCase.keepOut?.proximalMm ?? 0;
  const high = patientCase.bone.lengthMm - (patientCase.keepOut?.distalMm ?? 0);
  const { fromMm, toMm } = patientCase.fracture;
  const near = 2 * pin.diameterMm;
  const places = [low + near, fromMm - 2 * near, toMm + 2 * near, high - near];
  return {
    im: null,
    pins: places.map((s) => ({ drawerId: pin.id, sMm: toStep(s), tiltDeg: 0, aboutDeg: 0 })),
    column: { drawerId: column.id, clearanceMm: 4 },
    grip: 'usual',
  };
}

export function columnClearance(column: Construct['column']): number {
  const near = [column].flat().find(({ side }) => side !== 'far');
  return near?.clearanceMm ?? 0;
}
