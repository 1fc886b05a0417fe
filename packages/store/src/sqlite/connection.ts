import process from 'node:process';

export type SqliteValue = string | number | bigint | Uint8Array | null;

/** What this program needs of SQLite: the interface that Node's own module and the package share. */
export interface SqliteConnection {
  exec(sql: string): void;
  prepare(sql: string): SqliteStatement;
  close(): void;
}

export interface SqliteStatement {
  all(...parameters: SqliteValue[]): unknown[];
  run(...parameters: SqliteValue[]): {
    readonly changes: number | bigint;
    readonly lastInsertRowid: number | bigint;
  };
  iterate(...parameters: SqliteValue[]): IterableIterator<unknown>;
  columns(): readonly unknown[];
}

/** `built-in` is node:sqlite, complete from Node 24; `package` is @photostructure/sqlite with SQLite inside. */
export type SqliteDriver = 'built-in' | 'package';

interface SqliteModule {
  readonly DatabaseSync: new (file: string, options: { readonly timeout: number }) => SqliteConnection;
}

export function hasBuiltIn(): boolean {
  return Number(process.versions.node.split('.')[0]) >= 24;
}

export function usualDriver(): SqliteDriver {
  return hasBuiltIn() ? 'built-in' : 'package';
}

/**
 * Opens a database file so that a commit is on the disk when it returns: a write-ahead log that is flushed at every
 * commit. NORMAL would flush only now and then and lose the last edits at a power cut. `fullfsync` is what macOS needs
 * for the same promise and nothing elsewhere.
 * @throws when the file is not a database or cannot be opened
 */
export async function openConnection(
  file: string,
  driver: SqliteDriver = usualDriver(),
): Promise<SqliteConnection> {
  const { DatabaseSync } = await sqliteModule(driver);
  const connection = new DatabaseSync(file, { timeout: 5_000 });
  try {
    connection.exec('pragma journal_mode = wal');
    connection.exec('pragma synchronous = full');
    connection.exec('pragma fullfsync = 1');
    connection.exec('pragma foreign_keys = on');
  } catch (error) {
    connection.close();
    throw error;
  }
  return connection;
}

export async function sqliteModule(driver: SqliteDriver): Promise<SqliteModule> {
  if (driver === 'built-in') return process.getBuiltinModule('node:sqlite') as unknown as SqliteModule;
  return (await import('@photostructure/sqlite')) as unknown as SqliteModule;
}
