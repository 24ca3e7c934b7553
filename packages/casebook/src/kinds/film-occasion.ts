/** When in the course of a case a film was taken. */
import { z } from 'zod';

export const OCCASIONS = ['before', 'in theatre', 'after', 'recheck', 'after removal'] as const;
export const occasionSchema = z.enum(OCCASIONS);
export type Occasion = (typeof OCCASIONS)[number];
