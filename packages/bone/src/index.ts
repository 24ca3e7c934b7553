export { type CanalLine, canalLine, clearanceAt, fitted, isthmus } from './canal-line.ts';
export { type Fracture, type FragmentName, type Fragments, fragmentAt, fragmentsOf } from './fragments.ts';
export {
  type BoreClass,
  type CanalBasis,
  changed,
  type Pair,
  type Profile,
  type ProfileStation,
  profileOf,
  type Section,
  type Station,
  sectionAt,
} from './profile.ts';
export { type Ring, type RingProperties, ringProperties, type Wall, wallAt, widthAcross } from './ring.ts';
