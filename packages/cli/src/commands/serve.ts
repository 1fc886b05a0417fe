import { badUse, type Command } from '../command.ts';
import { exitCode } from '../io.ts';
import { failWith, outJson } from '../report.ts';

export const serve: Command = {
  words: ['serve'],
  summary: 'start the program in the browser, on this machine only',
  operands: [],
  options: {
    data: { value: 'DIR', help: 'folder for studies and films; left out, the folder for the user’s data' },
    port: { value: 'N', help: 'port on 127.0.0.1; left out, the usual one or any that is free' },
    demo: { help: 'add the demo study when there is none yet' },
    open: { help: 'open the address in the browser of the desktop' },
    json: { help: 'print the address and the folder as JSON' },
  },
  example: 'evenhand serve --demo --open',
  notes: ['Stop it with Ctrl+C. Nothing leaves the machine, and no other machine can reach the server.'],
  run: async (call, io) => {
    const json = call.flag('json');
    const wish = call.text('port');
    const port = wish === undefined ? undefined : readPort(wish);
    if (port === null)
      return failWith(io, json, [badUse(`“${wish}” is not a port; it can be 1 to 65535.`, serve.example)]);
    const started = await io.serve({ dataFolder: call.text('data'), port, demo: call.flag('demo') });
    if (!started.ok) return failWith(io, json, [started.error]);
    const server = started.value;
    if (json) await outJson(io, { address: server.address, dataFolder: server.dataFolder });
    else await io.out(`${server.address}\n`);
    io.say(`Evenhand is at ${server.address} and keeps its data in ${server.dataFolder}. Ctrl+C stops it.`);
    if (call.flag('open') && !io.openBrowser(server.address))
      io.say('There is no desktop here: open the address in a browser.');
    await io.stopped();
    await server.close();
    return exitCode.done;
  },
};

function readPort(text: string): number | null {
  const port = Number(text);
  return /^\d{1,5}$/.test(text) && port >= 1 && port <= 65_535 ? port : null;
}
