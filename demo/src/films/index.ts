/** The demonstration's films: projected from invented bones, written as an X-ray machine writes them. Always the same. */
import type { GreyImage, Pixel, Towards, TraceRequest } from '@bonewright/film';
import { type PatientKey, patients } from '../patients.ts';
import { type DemoLimb, limbs } from './bones.ts';
import { limbFilm, type View } from './limb-scene.ts';
import type { Repair } from './repair-solids.ts';
import { writeDicom } from './write-dicom.ts';

/** One film with what a surgeon would click on it. */
export interface ProjectedFilm {
  readonly patientId: string;
  readonly view: View;
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly image: GreyImage;
  readonly request: TraceRequest;
  readonly columnTowards: Towards;
  readonly fractureLine: readonly [Pixel, Pixel];
  readonly boneEnds: readonly [Pixel, Pixel];
}

const VIEWS: readonly View[] = ['craniocaudal', 'mediolateral'];

/** Both views of one patient. */
export function filmsOf(key: PatientKey): ProjectedFilm[] {
  const { limb, patient } = known(key);
  return VIEWS.map((view) => filmOf(limb, patient, view));
}

/** What was left of the displacement by the hand that reduced it, and the gap. */
const LEFT_MM: readonly [number, number, number] = [0.35, -0.2, 0.5];
const LEFT_DEG: readonly [number, number] = [-2, 3];

/** Both views of one patient some days after its operation. */
export function laterFilmsOf(key: PatientKey, repair: Repair): ProjectedFilm[] {
  const { limb, patient } = known(key);
  const reduced = { ...limb, shiftMm: LEFT_MM, turnDeg: LEFT_DEG };
  return VIEWS.map((view) => filmOf(reduced, patient, view, repair));
}

function known(key: PatientKey) {
  const limb = limbs.find((l) => l.key === key);
  const patient = patients.find((p) => p.key === key);
  if (!limb || !patient) throw new Error(`no demonstration patient "${key}"`);
  return { limb, patient };
}

function filmOf(
  limb: DemoLimb,
  { admission }: (typeof patients)[number],
  view: View,
  repair: Repair | null = null,
): ProjectedFilm {
  const laterality = admission.side === 'left' ? 'L' : 'R';
  const film = limbFilm(limb, view, laterality, repair);
  const bytes = writeDicom(film.image, {
    patientName: admission.name ?? '',
    patientId: admission.number,
    species: admission.species,
    organization: 'Thornbeck Wildlife Rescue',
    institution: 'Marl Lane Veterinary Referrals',
    bodyPart: admission.bone.toUpperCase().slice(0, 16),
    laterality,
    viewPosition: view === 'craniocaudal' ? 'CRCD' : 'ML',
    date: '20260314',
    time: view === 'craniocaudal' ? '225800' : '230100',
    imagerPixelSpacingMm: limb.pitchMm,
    sourceToDetectorMm: film.camera.sourceToDetectorMm,
    bitsStored: film.kind.bitsStored,
    window: windowOf(film.image),
    serial: `${limb.seed}${view === 'craniocaudal' ? 1 : 2}${repair ? `.${repair.day + 1}` : ''}`,
  });
  return {
    patientId: admission.number,
    view,
    fileName: `${admission.number}-${view}${repair ? `-day-${repair.day}` : ''}.dcm`,
    bytes,
    image: film.image,
    request: film.request,
    columnTowards: view === 'craniocaudal' ? 'medial' : 'cranial',
    fractureLine: film.fractureLine,
    boneEnds: film.boneEnds,
  };
}

/** A window that shows skin to cortex: from the open beam to where the densest bone ends. */
function windowOf(image: GreyImage): { centre: number; width: number } {
  const sorted = Uint16Array.from(image.pixels).sort();
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!;
  const low = at(0.02);
  const high = at(0.86) + 0.9 * (at(0.86) - low);
  return { centre: Math.round((low + high) / 2), width: Math.round(high - low) };
}
