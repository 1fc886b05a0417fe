import { describe, expect, it } from 'vitest';
import { makeStudy, rawRequest, serverUnderTest } from './testing/server-under-test.ts';

const openPaths = ['/', '/api/health', '/api/studies'];

describe('who may ask', () => {
  it.each([
    ['a name that was made to point here', { host: 'evil.example:PORT' }],
    ['the right name with another port', { host: '127.0.0.1:1' }],
    ['no port', { host: 'localhost' }],
    ['the address of another machine', { host: '192.168.1.5:PORT' }],
    ['another page', { host: '127.0.0.1:PORT', origin: 'http://evil.example' }],
    ['a page of another port here', { host: '127.0.0.1:PORT', origin: 'http://127.0.0.1:3000' }],
    ['a page from a file', { host: '127.0.0.1:PORT', origin: 'null' }],
    ['our page under https', { host: '127.0.0.1:PORT', origin: 'https://127.0.0.1:PORT' }],
    [
      'an image in another page',
      { host: '127.0.0.1:PORT', 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' },
    ],
    [
      'a frame of a page of another port here',
      { host: 'localhost:PORT', 'sec-fetch-site': 'same-site', 'sec-fetch-mode': 'no-cors' },
    ],
  ])('%s is refused everywhere', async (_who, headers) => {
    const { running } = await serverUnderTest();
    const { port } = new URL(running.address);
    const sent = Object.fromEntries(
      Object.entries(headers).map(([name, value]) => [name, value.replace('PORT', port)]),
    );
    for (const where of openPaths) {
      const answer = await rawRequest(running.address, where, sent);
      expect([where, answer.status]).toEqual([where, 403]);
      expect(JSON.parse(answer.body).findings[0].code).toBe('server/refused');
      expect(answer.headers['content-security-policy']).toContain("default-src 'self'");
    }
  });

  it.each(['127.0.0.1', 'localhost'])('our own page under %s may ask', async (name) => {
    const { running } = await serverUnderTest();
    const { port } = new URL(running.address);
    const host = `${name}:${port}`;
    for (const headers of [{ host }, { host, origin: `http://${host}`, 'sec-fetch-site': 'same-origin' }]) {
      for (const where of openPaths)
        expect((await rawRequest(running.address, where, headers)).status).toBe(200);
    }
  });

  it('a link from elsewhere opens the page but not the API', async () => {
    const { running } = await serverUnderTest();
    const headers = {
      host: new URL(running.address).host,
      'sec-fetch-site': 'cross-site',
      'sec-fetch-mode': 'navigate',
    };
    expect((await rawRequest(running.address, '/', headers)).status).toBe(200);
    expect((await rawRequest(running.address, '/api/studies', headers)).status).toBe(403);
  });

  it('a refused request changes nothing', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const answer = await server.fetch('/api/studies/study-1/archive', {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: 'http://evil.example' },
      body: '{"archived":true}',
    });
    expect(answer.status).toBe(403);
    expect(await (await server.fetch('/api/studies')).json()).toMatchObject([{ archived: false }]);
  });

  it('listens on the loopback address alone', async () => {
    const { running } = await serverUnderTest();
    expect(new URL(running.address).hostname).toBe('127.0.0.1');
  });
});

describe('what every answer says', () => {
  it.each(['/', '/api/health', '/api/nothing', '/nothing', '/assets/main-1a2b.js'])(
    '%s carries the strict policy',
    async (where) => {
      const server = await serverUnderTest();
      const { headers } = await server.fetch(where);
      const policy = new Map(
        (headers.get('content-security-policy') ?? '').split('; ').map((rule) => {
          const [name = '', ...values] = rule.split(' ');
          return [name, values.join(' ')] as const;
        }),
      );
      // A hash lets through one text and no other, so it is no opening.
      expect(policy.get('style-src')).toMatch(/^'self'( 'sha256-[A-Za-z0-9+/]{43}=')*$/);
      for (const name of ['default-src', 'script-src', 'connect-src'])
        expect([name, policy.get(name)]).toEqual([name, "'self'"]);
      for (const name of ['object-src', 'base-uri', 'form-action', 'frame-ancestors'])
        expect([name, policy.get(name)]).toEqual([name, "'none'"]);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
      expect(headers.get('access-control-allow-origin')).toBeNull();
    },
  );
});
