export type { Frozen } from '@bonewright/ward';
