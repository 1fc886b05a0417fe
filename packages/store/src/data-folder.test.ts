import { describe, expect, it } from 'vitest';
import { defaultDataFolder, type Surroundings } from './data-folder.ts';

describe('where the data of a user lie', () => {
  const cases: readonly [string, string, Surroundings['env'], string, string][] = [
    ['linux', '/home/a', {}, '/home/a/.local/share/evenhand', 'XDG Base Directory 0.8'],
    ['linux', '/home/a', { XDG_DATA_HOME: '/data' }, '/data/evenhand', 'XDG Base Directory 0.8'],
    [
      'linux',
      '/home/a',
      { XDG_DATA_HOME: 'data' },
      '/home/a/.local/share/evenhand',
      'XDG 0.8: relative ones are ignored',
    ],
    ['linux', '/home/a', { XDG_DATA_HOME: '' }, '/home/a/.local/share/evenhand', 'XDG 0.8: empty is not set'],
    ['darwin', '/Users/a', {}, '/Users/a/Library/Application Support/Evenhand', 'common practice'],
    ['win32', 'C:\\Users\\a', { LOCALAPPDATA: 'D:\\Local' }, 'D:\\Local\\Evenhand', 'common practice'],
    ['win32', 'C:\\Users\\a', {}, 'C:\\Users\\a\\AppData\\Local\\Evenhand', 'common practice'],
  ];
  it.each(cases)('%s, %s, %j: %s (%s)', (platform, home, env, expected) => {
    expect(defaultDataFolder({ platform, home, env })).toBe(expected);
  });
});
