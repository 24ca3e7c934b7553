export { runServer } from './run-server.ts';
export { type Running, type ServeOptions, serve } from './serve.ts';
