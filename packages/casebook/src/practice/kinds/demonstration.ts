/** The demonstration puts invented things into the practice's record, marked so; nothing recorded is dropped, so an event takes them out. */
import { z } from 'zod';
import { practiceKind } from './practice-kind.ts';

/** Everything marked as demonstration stands no longer. */
export const demonstrationKinds = [practiceKind('demonstration-removed', z.strictObject({}))] as const;
