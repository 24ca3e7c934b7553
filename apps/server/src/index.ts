export { readBundle } from './exchange/read-bundle.ts';
export { writeBundle } from './exchange/write-bundle.ts';
export { handOverPassword, makePerson } from './people/accounts.ts';
export { Passwords } from './people/password.ts';
export { runServer } from './run-server.ts';
export { type Running, type ServeOptions, serve } from './serve.ts';
