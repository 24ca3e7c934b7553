/** Where nothing in the drawer can do it: what is missing, in words. */
import { type FragmentName, profileOf, sectionAt, widthAcross } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import { FRAGMENTS } from '../checks/context.ts';
import { capital, inPercent } from '../checks/words.ts';
import { classOf, isGrowing } from '../loads/species.ts';
import type { Case, DrawerPin } from '../model/case-file.ts';
import { type Ground, mostFrequent } from './candidates.ts';
import { layoutsOf, spacingOf } from './layouts.ts';

/** What no search is needed for; null where the drawer holds something to try. */
export function emptyDrawer({ drawer }: Case): string | null {
  if (drawer.pins.every(({ count }) => count === 0)) return 'No fixator pin is in the drawer.';
  return drawer.columns.length === 0 ? 'No column is in the drawer.' : null;
}

/** The first thing that would have to change. `refused` says how many constructs each check stopped. */
export function nearestWords(ground: Ground, refused: ReadonlyMap<string, number>): string {
  return unmarkedPlates(ground) ?? tooThick(ground) ?? tooFew(ground) ?? noRoom(ground) ?? stoppedBy(refused);
}

function unmarkedPlates({ patientCase }: Ground): string | null {
  const { keepOut } = patientCase;
  if (!isGrowing(patientCase) || (keepOut && keepOut.proximalMm > 0 && keepOut.distalMm > 0)) return null;
  return 'The patient still grows and its growth plates are not marked. Mark a keep-out over each.';
}

const inStock = ({ patientCase: { drawer } }: Ground): DrawerPin[] =>
  drawer.pins.filter(({ count }) => count > 0).toSorted((a, b) => a.diameterMm - b.diameterMm);

/** The shaft's width decides: the flared ends take few pins. */
function shaftWidth({ patientCase, aboutDeg }: Ground): number {
  const { bone, fracture } = patientCase;
  const profile = profileOf(bone.lengthMm, bone.stations, classOf(patientCase));
  return widthAcross(sectionAt(profile, (fracture.fromMm + fracture.toMm) / 2), aboutDeg);
}

const percentOf = (pin: DrawerPin, widthMm: number): number => (100 * pin.diameterMm) / widthMm;

function tooThick(ground: Ground): string | null {
  const thinnest = inStock(ground)[0]!;
  const widthMm = shaftWidth(ground);
  const most = value('rule.pin-ratio.stop');
  if (percentOf(thinnest, widthMm) <= most) return null;
  const fits = Math.floor((widthMm * most) / TENTHS_PER_HUNDRED) / 10;
  const share = `${inPercent(percentOf(thinnest, widthMm))} of the bone`;
  const size = `${thinnest.diameterMm.toFixed(1)} mm`;
  return `The thinnest pin, ${size}, is ${share} (stop over ${inPercent(most)}). ${fits.toFixed(1)} mm would fit.`;
}

const pins = (count: number): string => (count === 0 ? 'no pin' : `${count} pin${count === 1 ? '' : 's'}`);

/** Per cent to whole tenths of a millimetre. */
const TENTHS_PER_HUNDRED = 10;

function tooFew(ground: Ground): string | null {
  const widthMm = shaftWidth(ground);
  const least = value('rule.pins-per-fragment.least');
  const fitting = inStock(ground).filter((pin) => percentOf(pin, widthMm) <= value('rule.pin-ratio.stop'));
  const count = fitting.reduce((sum, pin) => sum + pin.count, 0);
  if (count < 2 * least) return `Only ${pins(count)} fit this bone; at least ${2 * least} are needed.`;
  const pairs = fitting.reduce((sum, pin) => sum + Math.floor(pin.count / least), 0);
  return pairs >= 2 ? null : `The pins that fit are too few of a size: each fragment needs ${least} alike.`;
}

function noRoom(ground: Ground): string | null {
  const shortest = FRAGMENTS.map((fragment) => ({ fragment, room: roomIn(ground, fragment) })).toSorted(
    (a, b) => a.room - b.room,
  )[0]!;
  const least = value('rule.pins-per-fragment.least');
  if (shortest.room >= least) return null;
  const why = shortest.room > 0 ? '' : whyNoPlace(ground);
  const where = `The ${shortest.fragment} fragment has room for ${pins(shortest.room)}`;
  return `${where} between fracture and joint; ${least} are needed.${why}`;
}

/** Pins of the size that fits best there, two at most. */
function roomIn({ patientCase, sites }: Ground, fragment: FragmentName): number {
  const rooms = patientCase.drawer.pins.map(({ id }) => {
    const places = sites(id, null).allowed[fragment];
    if (places.length === 0) return 0;
    return layoutsOf(places, 2, spacingOf(patientCase, id)).length > 0 ? 2 : 1;
  });
  return Math.max(...rooms);
}

const WHY_NO_PLACE: Readonly<Record<string, string>> = {
  corridor: ' No safe corridor is marked there.',
  'fissure-distance': ' Fissures take what is left.',
  'pin-ratio': ' The pins are too thick for it.',
};

function whyNoPlace({ patientCase, sites }: Ground): string {
  const stops = patientCase.drawer.pins.flatMap(({ id }) => sites(id, null).stops);
  return WHY_NO_PLACE[mostFrequent(stops) ?? ''] ?? '';
}

const EVERY_CONSTRUCT: Readonly<Record<string, string>> = {
  'column-size': 'Every column in the drawer is too thin for this bone.',
  'mass-carried': 'Every frame from this drawer is too heavy for this patient.',
  'skin-clearance': 'The limb is too curved: a straight column would touch the skin.',
  'pin-ratio': 'Where pins could go, those in the drawer are too thick for the bone. A thinner one is missing.',
  'pin-spacing': 'The pins in the drawer are too thick to stand side by side in the room there is.',
  'drawer-stock': 'The pins that fit are too few: each frame takes more of one size than the drawer holds.',
  'spread-proximal': 'The pins find room only side by side in the proximal fragment: that holds little more than one.',
  'spread-distal': 'The pins find room only side by side in the distal fragment: that holds little more than one.',
};

function stoppedBy(refused: ReadonlyMap<string, number>): string {
  const most = [...refused].toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? '';
  return EVERY_CONSTRUCT[most] ?? `${capital(most.replaceAll('-', ' '))} stops every construct from this drawer.`;
}
