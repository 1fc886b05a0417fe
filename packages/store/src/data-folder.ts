import path from 'node:path';

export interface Surroundings {
  readonly platform: string;
  readonly home: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/**
 * Where a user's studies and films lie when no folder is named. Sources: XDG Base Directory Specification 0.8 for Linux
 * (a relative XDG_DATA_HOME is to be ignored); Application Support and LOCALAPPDATA: common practice.
 */
export function defaultDataFolder({ platform, home, env }: Surroundings): string {
  if (platform === 'win32') {
    const local = env.LOCALAPPDATA ?? path.win32.join(home, 'AppData', 'Local');
    return path.win32.join(local, 'Evenhand');
  }
  if (platform === 'darwin') return path.posix.join(home, 'Library', 'Application Support', 'Evenhand');
  const named = env.XDG_DATA_HOME;
  const base = named?.startsWith('/') === true ? named : path.posix.join(home, '.local', 'share');
  return path.posix.join(base, 'evenhand');
}
