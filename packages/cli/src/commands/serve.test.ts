import { fail } from '@evenhand/core/ground/base';
import { finding } from '@evenhand/core/ground/findings';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

describe('evenhand serve', () => {
  it('prints the address alone to stdout, waits for the end and closes the server', async () => {
    const { code, out, err, closed, asked, opened } = await call(['serve'], { desktop: true });
    expect([code, out, closed, opened]).toEqual([0, 'http://127.0.0.1:4321/\n', 1, []]);
    expect(err).toContain('keeps its data in /data');
    expect(asked).toEqual([{ dataFolder: undefined, port: undefined, demo: false }]);
  });

  it('hands on the folder, the port and the demo', async () => {
    const { asked } = await call(['serve', '--data', '/tmp/d', '--port', '8080', '--demo']);
    expect(asked).toEqual([{ dataFolder: '/tmp/d', port: 8080, demo: true }]);
  });

  it('opens a browser where there is a desktop, and says so where there is none', async () => {
    expect((await call(['serve', '--open'], { desktop: true })).opened).toEqual(['http://127.0.0.1:4321/']);
    expect((await call(['serve', '--open'])).err).toContain('There is no desktop here');
  });

  it('prints JSON with --json', async () => {
    expect(JSON.parse((await call(['serve', '--json'])).out)).toEqual({
      address: 'http://127.0.0.1:4321/',
      dataFolder: '/data',
    });
  });

  it.each(['0', '65536', '80a', '-1', '1.5', ''])('port %j is refused', async (port) => {
    const { code, asked, err } = await call(['serve', `--port=${port}`]);
    expect([code, asked.length]).toEqual([2, 0]);
    expect(err).toContain(`“${port}” is not a port`);
  });

  it('a server that cannot start says why', async () => {
    const taken = finding('store/in-use', {}, { pid: 7, folder: '/data' });
    const { code, out, err } = await call(['serve', '--json'], { serve: async () => fail(taken) });
    expect([code, JSON.parse(out)]).toEqual([2, { ok: false, findings: [taken] }]);
    expect(err).toContain('Another Evenhand (process 7) uses the data folder /data.');
  });
});
