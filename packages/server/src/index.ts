export type { Demo } from './demo.ts';
export { type RunningServer, type ServerOptions, startServer } from './start-server.ts';
