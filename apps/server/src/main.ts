/** `npm start` ends here. */
import { faultLine, InputError } from '@bonewright/fault';
import { runServer } from './run-server.ts';

runServer(process.argv.slice(2)).catch((error: unknown) => {
  const isInput = error instanceof InputError;
  const fault = error instanceof Error ? error.stack : String(error);
  process.stderr.write(`error: ${isInput ? faultLine(error) : `a fault of Bonewright's own: ${fault}`}\n`);
  process.exitCode = isInput ? 2 : 1;
});
