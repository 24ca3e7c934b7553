/** What a case's schema cannot say: order along the bone, names that must be in the drawer, sizes that must fit. */
import { InputError } from '@bonewright/fault';
import type { BoneInput, Case, Construct, Drawer, DrawerPin } from './case-file.ts';
import { hasMaterial, knownMaterials, needleSize } from './materials.ts';

/** Throws InputError at the first thing that cannot be. */
export function checkCase(patientCase: Case): void {
  checkBone(patientCase.bone);
  checkFracture(patientCase);
  checkStretches(patientCase);
  checkDrawer(patientCase.drawer);
  if (patientCase.construct) checkConstruct(patientCase, patientCase.construct, 'construct');
}

/** As `checkCase`, for a construct that came on its own. `path` names it in the fault. */
export function checkConstruct(patientCase: Case, construct: Construct, path: string): void {
  const { drawer, bone } = patientCase;
  construct.pins.forEach((pin, i) => {
    const at = `${path}.pins.${i}`;
    inDrawer(drawer.pins, pin.drawerId, `${at}.drawerId`, 'pins');
    if (pin.sMm > bone.lengthMm) fail(`a pin at ${pin.sMm} mm is past the bone's end`, `${at}.sMm`, upTo(bone));
    if (Math.abs(pin.tiltDeg) >= STEEPEST_DEG) {
      fail(
        `a pin leaning ${pin.tiltDeg} degrees never meets the far wall`,
        `${at}.tiltDeg`,
        `stay within ${STEEPEST_DEG}`,
      );
    }
  });
  const columns = [construct.column].flat();
  columns.forEach((column, i) => {
    const at = Array.isArray(construct.column) ? `${path}.column.${i}` : `${path}.column`;
    inDrawer(drawer.columns, column.drawerId, `${at}.drawerId`, 'columns');
  });
  if (columns.length === 2 && columns[0]!.side === columns[1]!.side) {
    fail('both columns are on the same side', `${path}.column.1.side`, 'give the second "side": "far"');
  }
  if (construct.im) inDrawer(drawer.imPins, construct.im.drawerId, `${path}.im.drawerId`, 'imPins');
}

/** Past this a pin runs along the bone rather than across it. */
const STEEPEST_DEG = 75;

const fail = (what: string, path: string, hint: string): never => {
  throw new InputError(what, path, hint);
};
const upTo = (bone: BoneInput): string => `give at most ${bone.lengthMm}, the bone's length`;

function checkBone(bone: BoneInput): void {
  bone.stations.forEach((station, i) => {
    const at = `bone.stations.${i}`;
    const before = bone.stations[i - 1];
    if (before && station.sMm <= before.sMm) {
      fail(`station ${i} at ${station.sMm} mm does not come after ${before.sMm} mm`, `${at}.sMm`, 'order them along s');
    }
    if (station.sMm > bone.lengthMm)
      fail(`station at ${station.sMm} mm is past the bone's end`, `${at}.sMm`, upTo(bone));
    station.canalMm?.forEach((canal, axis) => {
      const outer = station.outerMm[axis]!;
      if (canal >= outer) {
        fail(
          `canal ${canal} mm is as wide as its bone, ${outer} mm`,
          `${at}.canalMm.${axis}`,
          'make it narrower, or null',
        );
      }
    });
  });
}

function checkFracture({ bone, fracture }: Case): void {
  const { fromMm, toMm, gapMm, comminuted } = fracture;
  if (toMm < fromMm) fail(`toMm ${toMm} lies before fromMm ${fromMm}`, 'fracture.toMm', 'give the distal end there');
  if (fromMm <= 0)
    fail('the fracture starts at the bone’s proximal end', 'fracture.fromMm', 'leave a proximal fragment');
  if (toMm >= bone.lengthMm) {
    fail(
      `the fracture reaches ${toMm} mm, the bone ends at ${bone.lengthMm}`,
      'fracture.toMm',
      'leave a distal fragment',
    );
  }
  if (gapMm > toMm - fromMm + ROUNDING_MM) {
    fail(
      `gap ${gapMm} mm is longer than the broken stretch, ${round(toMm - fromMm)} mm`,
      'fracture.gapMm',
      'make it fit',
    );
  }
  if (comminuted && toMm === fromMm) {
    fail('pieces need a stretch to lie in', 'fracture.toMm', 'give where the pieces end, or "comminuted": false');
  }
}

/** Lengths made of sums of tenths must not fail by their last bit. */
const ROUNDING_MM = 1e-9;
const round = (mm: number): number => Number(mm.toPrecision(6));

function checkStretches({ bone, keepOut, corridors = [], softTissueMm = [], fracture }: Case): void {
  if (keepOut && keepOut.proximalMm + keepOut.distalMm >= bone.lengthMm) {
    fail('the keep-outs leave nothing of the bone', 'keepOut', 'make them shorter');
  }
  corridors.forEach((corridor, i) => {
    if (corridor.toMm <= corridor.fromMm) fail('a corridor ends before it starts', `corridors.${i}.toMm`, 'swap them');
    if (corridor.aboutDeg[1] < corridor.aboutDeg[0]) {
      fail('a corridor turns backwards', `corridors.${i}.aboutDeg`, 'give the smaller angle first');
    }
  });
  softTissueMm.forEach((place, i) => {
    const before = softTissueMm[i - 1];
    if (before && place.sMm <= before.sMm) {
      fail(
        `depth at ${place.sMm} mm does not come after ${before.sMm} mm`,
        `softTissueMm.${i}.sMm`,
        'order them along s',
      );
    }
  });
  fracture.fissuresMm.forEach(([from, to], i) => {
    if (to < from) fail('a fissure ends before it starts', `fracture.fissuresMm.${i}`, 'give the proximal end first');
  });
}

function checkDrawer(drawer: Drawer): void {
  for (const [kind, list] of Object.entries({ pins: drawer.pins, imPins: drawer.imPins, columns: drawer.columns })) {
    const seen = new Set<string>();
    list.forEach((item, i) => {
      const at = `drawer.${kind}.${i}`;
      if (seen.has(item.id)) fail(`the id "${item.id}" stands twice`, `${at}.id`, 'give each its own');
      seen.add(item.id);
      if (hasMaterial(item.material) || (item.youngMPa !== undefined && item.yieldMPa !== undefined)) return;
      const known = knownMaterials().join(', ');
      fail(`no figures for "${item.material}"`, `${at}.material`, `use one of ${known}, or give youngMPa and yieldMPa`);
    });
  }
  for (const [i, pin] of drawer.pins.entries()) checkPin(pin, `drawer.pins.${i}`);
}

function checkPin(pin: DrawerPin, at: string): void {
  if (pin.kind === 'threaded-end' || pin.kind === 'threaded-centre') {
    if (pin.coreDiameterMm === undefined) fail('a threaded pin has no core', `${at}.coreDiameterMm`, 'give it in mm');
    if (pin.coreDiameterMm! > pin.diameterMm) {
      fail(
        `core ${pin.coreDiameterMm} mm is wider than its pin, ${pin.diameterMm} mm`,
        `${at}.coreDiameterMm`,
        'make it smaller',
      );
    }
  }
  if (pin.kind !== 'needle') return;
  if (pin.gauge === undefined) throw new InputError('a needle has no gauge', `${at}.gauge`, 'give it');
  const size = needleSize(pin.gauge);
  if (!size) throw new InputError(`no size known for ${pin.gauge} gauge`, `${at}.gauge`, 'use 14, 16, 18 to 23 or 25');
  if (pin.diameterMm <= size.innerMm) {
    fail(
      `a ${pin.gauge} gauge bore, ${size.innerMm} mm, does not fit in ${pin.diameterMm} mm`,
      `${at}.diameterMm`,
      'give its outer diameter',
    );
  }
}

function inDrawer(list: readonly { readonly id: string }[], id: string, path: string, kind: string): void {
  if (list.some((item) => item.id === id)) return;
  const there = list.map((item) => item.id).join(', ') || 'nothing';
  fail(`"${id}" is not in the drawer`, path, `drawer.${kind} holds ${there}`);
}
