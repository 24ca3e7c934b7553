/** What every answer says to the browser. */
import helmet from '@fastify/helmet';
import type { FastifyInstance } from 'fastify';

export async function guard(app: FastifyInstance): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        // The solver's kernel is WebAssembly; it runs in workers from our own files.
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        workerSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        frameSrc: ["'self'", 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'self'"],
        formAction: ["'self'"],
        frameAncestors: ["'self'"],
        // Over plain HTTP, by name, this would ask for the page's own script over HTTPS, and it would never run.
        upgradeInsecureRequests: null,
      },
    },
    // These three mean nothing without HTTPS, and the browser complains of them.
    hsts: false,
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
  });
}
