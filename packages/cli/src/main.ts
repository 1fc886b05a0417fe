import process from 'node:process';
import { exitCode } from './io.ts';
import { nodeIo } from './node-io.ts';
import { faultText, run } from './run.ts';

const io = nodeIo();

// Whoever reads the output may stop reading (`evenhand check … | head`): that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    process.exit(error.code === 'EPIPE' ? exitCode.done : exitCode.bad);
  });
}
process.on('uncaughtException', (error) => {
  io.say(faultText(error, io.version));
  process.exit(exitCode.bad);
});

process.exitCode = await run(process.argv.slice(2), io);
