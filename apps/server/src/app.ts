/** The server without its socket: routes, guards and answers to faults around one store. */
import { randomBytes } from 'node:crypto';
import type { Store } from '@bonewright/store';
import cookie from '@fastify/cookie';
import fastify, { type FastifyInstance } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { Demonstration } from './demonstration.ts';
import { answerFaults } from './faults.ts';
import { guard } from './guard.ts';
import { Live } from './live.ts';
import { AccessLog } from './people/access-log.ts';
import { type PasswordCost, Passwords } from './people/password.ts';
import { Sessions } from './people/sessions.ts';
import type { ReceiveOptions } from './receive/receive-options.ts';
import { Receiver } from './receive/receiver.ts';
import { asking, requireRights } from './rights/every-route.ts';
import { limitRates } from './rights/limit-rates.ts';
import { askWho } from './rights/who-asks.ts';
import { attachmentRoutes } from './routes/attachments.ts';
import { casePaperRoutes } from './routes/case-papers.ts';
import { caseRoutes } from './routes/cases.ts';
import { copyRoutes } from './routes/copies.ts';
import { demonstrationRoutes } from './routes/demonstration.ts';
import { inboxRoutes } from './routes/inbox.ts';
import { linkRoutes } from './routes/links.ts';
import { liveRoutes } from './routes/live-updates.ts';
import { pageRoutes } from './routes/pages.ts';
import { peopleRoutes } from './routes/people.ts';
import { practiceRoutes } from './routes/practice.ts';
import { searchRoutes } from './routes/search.ts';
import { seriesRoutes } from './routes/series.ts';
import { sessionRoutes } from './routes/session.ts';
import { sheetRoutes } from './routes/sheet.ts';

export interface AppOptions {
  readonly store: Store;
  /** Where the built pages lie. */
  readonly webDir: string;
  /** Begin without the demonstration. */
  readonly isEmptyWanted?: boolean;
  /** Where X-ray machines may send films; off where it is left out. */
  readonly receive?: ReceiveOptions;
  /** Names by which this server may be asked, beside its addresses. */
  readonly names?: readonly string[];
  /** For tests: what a password's hash costs. */
  readonly passwordCost?: PasswordCost;
  readonly requestsPerMinute?: number;
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
  ...more
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
  await app.register(cookie);
  const people = {
    sessions: new Sessions(store.people),
    passwords: new Passwords(more.passwordCost),
    log: new AccessLog(store.people),
  };
  askWho(app, { ...people, people: store.people, names: more.names ?? [] });
  await limitRates(app, more.requestsPerMinute);
  app.get('/api/health', asking('anybody'), async () => ({ name: 'bonewright', position: await store.lastPosition() }));
  const context = { store, live, demonstration, receiver, people };
  caseRoutes(app, context);
  copyRoutes(app, context);
  practiceRoutes(app, context);
  attachmentRoutes(app, context);
  liveRoutes(app, context);
  demonstrationRoutes(app, context);
  inboxRoutes(app, context);
  searchRoutes(app, context);
  sheetRoutes(app);
  sessionRoutes(app, context);
  peopleRoutes(app, context);
  linkRoutes(app, context);
  casePaperRoutes(app, context);
  seriesRoutes(app, context);
  await pageRoutes(app, webDir);
  if (receive) app.addHook('onReady', () => receiver.start(receive));
  if (isEmptyWanted) await demonstration.decline();
  else app.addHook('onListen', () => demonstration.offer());
  return app;
}
