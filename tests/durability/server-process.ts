import process from 'node:process';
import { startServer } from '@evenhand/server';

/** A server in a process of its own, for the test that kills it: data folder as the argument, address to stdout. */
const [dataFolder = ''] = process.argv.slice(2);
const started = await startServer({ dataFolder, port: 0, page: dataFolder });
if (!started.ok) throw new Error(started.error.message);
process.stdout.write(`${started.value.address}\n`);
