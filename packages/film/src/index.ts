export type * from './model/film.ts';
export type * from './model/trace.ts';
