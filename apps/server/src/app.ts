/** The server without its socket: routes, guards and answers to faults around one store. */
import { randomBytes } from 'node:crypto';
import type { Store } from '@bonewright/store';
import fastify, { type FastifyInstance } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { Demonstration } from './demonstration.ts';
import { answerFaults } from './faults.ts';
import { guard } from './guard.ts';
import { Live } from './live.ts';
import type { ReceiveOptions } from './receive/receive-options.ts';
import { Receiver } from './receive/receiver.ts';
import { asking, requireRights } from './rights/every-route.ts';
import { attachmentRoutes } from './routes/attachments.ts';
import { caseRoutes } from './routes/cases.ts';
import { demonstrationRoutes } from './routes/demonstration.ts';
import { inboxRoutes } from './routes/inbox.ts';
import { liveRoutes } from './routes/live-updates.ts';
import { pageRoutes } from './routes/pages.ts';
import { practiceRoutes } from './routes/practice.ts';
import { sheetRoutes } from './routes/sheet.ts';

export interface AppOptions {
  readonly store: Store;
  /** Where the built pages lie. */
  readonly webDir: string;
  /** Begin without the demonstration. */
  readonly isEmptyWanted?: boolean;
  /** Where X-ray machines may send films; off where it is left out. */
  readonly receive?: ReceiveOptions;
  /** Where faults of our own are written down. */
  readonly log?: { write(line: string): void };
}

const LARGEST_JSON_BYTES = 16 * 1024 * 1024;
const FAULT_ID_BYTES = 5;

export async function buildApp({
  store,
  webDir,
  log,
  isEmptyWanted = false,
  receive,
}: AppOptions): Promise<FastifyInstance> {
  const app = fastify({
    logger: log ? { level: 'warn', stream: log } : false,
    bodyLimit: LARGEST_JSON_BYTES,
    forceCloseConnections: true,
    genReqId: () => randomBytes(FAULT_ID_BYTES).toString('hex'),
  });
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  const live = new Live(store);
  const demonstration = new Demonstration(store, live);
  const receiver = new Receiver(store, log);
  app.addHook('preClose', async () => {
    await receiver.stop();
    await demonstration.stop();
    live.close();
  });
  answerFaults(app);
  requireRights(app);
  await guard(app);
  app.get('/api/health', asking('anybody'), async () => ({ name: 'bonewright', position: await store.lastPosition() }));
  const context = { store, live, demonstration, receiver };
  caseRoutes(app, context);
  practiceRoutes(app, context);
  attachmentRoutes(app, context);
  liveRoutes(app, context);
  demonstrationRoutes(app, context);
  inboxRoutes(app, context);
  sheetRoutes(app);
  await pageRoutes(app, webDir);
  if (receive) app.addHook('onReady', () => receiver.start(receive));
  if (isEmptyWanted) await demonstration.decline();
  else app.addHook('onListen', () => demonstration.offer());
  return app;
}
