/** Whether the patient wears a frame now: pins went in, and nobody said that it was taken off. */
import type { CaseState } from './case-state.ts';

export const isFrameOn = ({ theatre, course }: CaseState): boolean =>
  course.frameTaken === null && theatre.pins.some(({ placed }) => placed !== null);
