import { type SqliteDatabase, SqliteDialect, type SqliteStatement as StatementOfKysely } from 'kysely';
import type { SqliteConnection, SqliteStatement, SqliteValue } from './connection.ts';

const KEPT_STATEMENTS = 64;

/** Kysely's SQLite dialect over our connection. Prepared statements are kept: preparing costs more than running. */
export function sqliteDialect(connection: SqliteConnection): SqliteDialect {
  const kept = new Map<string, StatementOfKysely>();
  const database: SqliteDatabase = {
    close: () => {
      kept.clear();
      connection.close();
    },
    prepare: (sql) => {
      const known = kept.get(sql);
      if (known !== undefined) return known;
      const oldest = kept.keys().next();
      if (kept.size >= KEPT_STATEMENTS && !oldest.done) kept.delete(oldest.value);
      const made = adapt(connection.prepare(sql));
      kept.set(sql, made);
      return made;
    },
  };
  return new SqliteDialect({ database });
}

function adapt(statement: SqliteStatement): StatementOfKysely {
  return {
    reader: statement.columns().length > 0,
    all: (parameters) => statement.all(...(parameters as SqliteValue[])),
    run: (parameters) => statement.run(...(parameters as SqliteValue[])),
    iterate: (parameters) => statement.iterate(...(parameters as SqliteValue[])),
  };
}
