/** The server without its socket: routes, guards and answers to faults around one store. */
import { randomBytes } from 'node:crypto';
import type { Store } from '@bonewright/store';
import fastify, { type FastifyInstance } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { answerFaults } from './faults.ts';
import { guard } from './guard.ts';
import { Live } from './live.ts';
import { attachmentRoutes } from './routes/attachments.ts';
import { caseRoutes } from './routes/cases.ts';
import { demonstrationRoutes } from './routes/demonstration.ts';
import { liveRoutes } from './routes/live-updates.ts';
import { pageRoutes } from './routes/pages.ts';

export interface AppOptions {
  readonly store: Store;
  /** Where the built pages lie. */
  readonly webDir: string;
  /** Where faults of our own are written down. */
  readonly log?: { write(line: string): void };
}

const LARGEST_JSON_BYTES = 16 * 1024 * 1024;
const FAULT_ID_BYTES = 5;

export async function buildApp({ store, webDir, log }: AppOptions): Promise<FastifyInstance> {
  const app = fastify({
    logger: log ? { level: 'warn', stream: log } : false,
    bodyLimit: LARGEST_JSON_BYTES,
    forceCloseConnections: true,
    genReqId: () => randomBytes(FAULT_ID_BYTES).toString('hex'),
  });
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  const live = new Live(store);
  app.addHook('preClose', async () => live.close());
  answerFaults(app);
  await guard(app);
  app.get('/api/health', async () => ({ name: 'bonewright', position: await store.lastPosition() }));
  const context = { store, live };
  caseRoutes(app, context);
  attachmentRoutes(app, context);
  liveRoutes(app, context);
  demonstrationRoutes(app, context);
  await pageRoutes(app, webDir);
  return app;
}
