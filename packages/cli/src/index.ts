export { type ExitCode, exitCode, type Io, IoFault, type RunningServer, type ServeOptions } from './io.ts';
export { commands, run } from './run.ts';
