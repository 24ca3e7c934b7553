/** Everything that can go wrong, as an answer in words: what is wrong, where, what to do, and that nothing was lost. */
import { faultLine, InputError } from '@bonewright/fault';
import { AwayError, ConflictError, DiskError } from '@bonewright/store';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { RefusedError } from './people/refused.ts';

interface FaultAnswer {
  /** One line for the person at the screen. */
  readonly error: string;
  /** Where: a dotted JSON path; absent for the whole request. */
  readonly path?: string;
  /** The number under which our own fault stands in the log. */
  readonly id?: string;
}

export function answerFaults(app: FastifyInstance): void {
  app.setErrorHandler<FastifyError>((error, request, reply) => {
    if (error instanceof ConflictError)
      return reply.code(409).send({
        error: 'Somebody else added to this record first. Look at what they did; what you did is still here.',
        seq: error.seq,
        missed: error.missed,
      });
    if (error instanceof RefusedError) return refuseAsker(reply, error);
    if (error instanceof InputError) return refuse(reply, 400, faultLine(error), error.path);
    if (hasZodFastifySchemaValidationErrors(error)) {
      const issue = error.validation[0];
      const path = (issue?.instancePath ?? '').split('/').filter(Boolean).join('.');
      return refuse(reply, 400, `${issue?.message ?? 'the request is malformed'}, at ${path || 'the request'}`, path);
    }
    if (error instanceof DiskError)
      return refuse(
        reply,
        507,
        `Not recorded: ${error.message}. Everything before it stands. Mend that and try again.`,
      );
    if (error instanceof AwayError)
      return refuse(
        reply,
        503,
        'The database does not answer. Everything that was acknowledged stands; what is sent again is recorded once.',
      );
    if (error.statusCode !== undefined && error.statusCode < 500) return refuse(reply, error.statusCode, error.message);
    return ourFault(error, request, reply);
  });
}

function refuse(reply: FastifyReply, status: number, error: string, path = ''): FastifyReply {
  const answer: FaultAnswer = path ? { error, path } : { error };
  return reply.code(status).send(answer);
}

function refuseAsker(reply: FastifyReply, { statusCode, message, retryAt }: RefusedError): FastifyReply {
  if (retryAt !== null) reply.header('retry-after', Math.max(1, Math.ceil((Date.parse(retryAt) - Date.now()) / 1000)));
  return reply.code(statusCode).send(retryAt === null ? { error: message } : { error: message, retryAt });
}

function ourFault(error: Error, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  request.log.error({ err: error, url: request.url }, `fault ${request.id}`);
  const answer: FaultAnswer = {
    error: `A fault of Bonewright's own, number ${request.id}. Nothing that was recorded is lost; try again.`,
    id: request.id,
  };
  return reply.code(500).send(answer);
}
