/** Every route names the right it asks for; one without is refused when the server starts. */
import { RIGHTS, type Right } from '@bonewright/casebook';
import type { FastifyInstance, RouteOptions } from 'fastify';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** What whoever asks must hold: packages/casebook/src/rights. */
    right?: Right;
  }
  interface FastifyInstance {
    /** Every route there is, with its right. */
    readonly routeRights: readonly RouteRight[];
  }
}

export interface RouteRight {
  readonly method: string;
  readonly url: string;
  readonly right: Right;
}

/** For the options of a route: `app.get(url, asking('read cases'), ...)`. */
export const asking = (right: Right) => ({ config: { right } });

/** To be called before the first route. */
export function requireRights(app: FastifyInstance): void {
  const routes: RouteRight[] = [];
  app.decorate('routeRights', routes);
  app.addHook('onRoute', (route) => {
    const right = rightOf(route);
    for (const method of [route.method].flat()) routes.push({ method, url: route.url, right });
  });
}

function rightOf({ method, url, config }: RouteOptions): Right {
  const right = config?.right;
  if (right !== undefined && Object.hasOwn(RIGHTS, right)) return right;
  throw new Error(
    `route ${[method].flat()} ${url} names no right: give it one of packages/casebook/src/rights/rights.ts`,
  );
}
