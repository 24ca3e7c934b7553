import { z } from 'zod';
import { kindOf, PRACTICE, signedHead } from '../../event-shape.ts';

const head = { ...signedHead, caseId: z.literal(PRACTICE) };

/** The schema of one kind of event of the practice's record. */
export const practiceKind = <K extends string, P extends z.ZodType>(name: K, payload: P) => kindOf(head, name, payload);
