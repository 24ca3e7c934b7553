/** The built pages. Any address that is not a file or the API is a place inside the page. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import serveFiles from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { asking } from '../rights/every-route.ts';

const NOT_BUILT = 'The pages have not been built yet. Stop the server and run npm start, which builds them.\n';

export async function pageRoutes(app: FastifyInstance, webDir: string): Promise<void> {
  const isBuilt = existsSync(join(webDir, 'index.html'));
  if (isBuilt) {
    await app.register(serveFiles, {
      root: webDir,
      serve: false,
      cacheControl: false,
      setHeaders: (response, path) => {
        // A built asset carries its hash in its name; the page itself is asked for again every time.
        const isHashed = path.startsWith(join(webDir, 'assets'));
        response.setHeader('cache-control', isHashed ? 'public, max-age=31536000, immutable' : 'no-cache');
      },
    });
    app.get<{ Params: { '*': string } }>('/*', asking('anybody'), (request, reply) =>
      reply.sendFile(request.params['*'] || 'index.html'),
    );
  }
  app.setNotFoundHandler((request, reply) => {
    if (request.method !== 'GET' || request.url.startsWith('/api/') || /\.\w+$/.test(request.url))
      return reply.code(404).send({ error: `There is nothing at ${request.url}.` });
    return isBuilt ? reply.sendFile('index.html') : reply.code(503).type('text/plain').send(NOT_BUILT);
  });
}
