/** The thread that decodes one film for `decodeIsolated` and is ended afterwards. */
import { parentPort, workerData } from 'node:worker_threads';
import { decodeToReply, repliedBuffers } from '../decode/reply.ts';

const { bytes, name } = workerData;
const reply = await decodeToReply(bytes, name);
parentPort?.postMessage(reply, repliedBuffers(reply));
