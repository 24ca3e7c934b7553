export type * from './model/frame-model.ts';
