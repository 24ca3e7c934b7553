/** Bird or mammal, grown or growing, by the words a keeper uses for the species. */
import type { BoreClass } from '@bonewright/bone';
import type { Case } from '../model/case-file.ts';

const BIRD =
  /\b(bird|owl|hawk|kestrel|buzzard|kite|falcon|merlin|hobby|harrier|eagle|osprey|raptor|pigeon|dove|crow|rook|raven|jackdaw|jay|magpie|gull|tern|swan|duck|mallard|goose|moorhen|coot|heron|egret|swift|swallow|martin|blackbird|thrush|robin|starling|sparrow|finch|tit|woodpecker|cuckoo|pheasant|partridge|quail|chicken|hen|parrot|parakeet|budgerigar|canary|gannet|guillemot|puffin|cormorant|oystercatcher|curlew|lapwing|plover|snipe|woodcock|kingfisher|wagtail|wren|warbler)s?\b/i;
const GROWING = /\b(juvenile|young|growing|immature|neonate|pup|kit|leveret|nestling|fledgling|hoglet|subadult)s?\b/i;

/** Birds are known by name; every other species counts as a mammal. `patient.class` goes before both. */
export function classOf({ patient }: Case): BoreClass {
  return patient.class ?? (BIRD.test(patient.species) ? 'bird' : 'mammal');
}

export const isGrowing = ({ patient }: Case): boolean =>
  GROWING.test(patient.ageClass ?? '') || GROWING.test(patient.species);

export const isHedgehog = ({ patient }: Case): boolean => /hedgehog|hoglet|erinaceus/i.test(patient.species);

const WING = /\b(humerus|radius|ulna|metacarpus|carpometacarpus)\b/i;

/** A wing carries no weight on the ground; what it bears is unknown and taken as for a leg. */
export const isWing = (patientCase: Case): boolean =>
  classOf(patientCase) === 'bird' && WING.test(patientCase.bone.name);
