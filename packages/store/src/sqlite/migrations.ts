import { type Kysely, type Migration, Migrator } from 'kysely';

/** One entry a change of the tables, run once each in the order of their names. An entry that was released never changes. */
const migrations: Readonly<Record<string, Migration>> = {
  '0001-studies-and-films': { up: createTables },
};

async function createTables(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('studies')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('title', 'text', (column) => column.notNull())
    .addColumn('rev', 'integer', (column) => column.notNull())
    .addColumn('created_at', 'text', (column) => column.notNull())
    .addColumn('changed_at', 'text', (column) => column.notNull())
    .addColumn('demo', 'integer', (column) => column.notNull())
    .addColumn('archived', 'integer', (column) => column.notNull())
    .addColumn('films', 'integer', (column) => column.notNull())
    .addColumn('methods', 'integer', (column) => column.notNull())
    .execute();
  await createHistory(db);
  await db.schema
    .createTable('films')
    .addColumn('sha256', 'text', (column) => column.primaryKey())
    .addColumn('bytes', 'bigint', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('media_type', 'text', (column) => column.notNull())
    .addColumn('added_at', 'text', (column) => column.notNull())
    .execute();
  await db.schema
    .createTable('uploads')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('sha256', 'text', (column) => column.notNull())
    .addColumn('at', 'text', (column) => column.notNull())
    .execute();
}

async function createHistory(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('revisions')
    .addColumn('study_id', 'text', (column) => column.notNull().references('studies.id'))
    .addColumn('rev', 'integer', (column) => column.notNull())
    .addColumn('edit_id', 'text', (column) => column.notNull())
    .addColumn('edit', 'text', (column) => column.notNull())
    .addColumn('inverse', 'text', (column) => column.notNull())
    .addColumn('client', 'text', (column) => column.notNull())
    .addColumn('edited_by', 'text')
    .addColumn('edited_at', 'text', (column) => column.notNull())
    .addColumn('why', 'text')
    .addColumn('saved_at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('revisions_key', ['study_id', 'rev'])
    .addUniqueConstraint('revisions_edit', ['study_id', 'edit_id'])
    .execute();
  await db.schema
    .createTable('refusals')
    .addColumn('study_id', 'text', (column) => column.notNull().references('studies.id'))
    .addColumn('edit_id', 'text', (column) => column.notNull())
    .addColumn('edit', 'text', (column) => column.notNull())
    .addColumn('finding', 'text', (column) => column.notNull())
    .addColumn('base_rev', 'integer', (column) => column.notNull())
    .addColumn('client', 'text', (column) => column.notNull())
    .addColumn('edited_by', 'text')
    .addColumn('edited_at', 'text', (column) => column.notNull())
    .addColumn('why', 'text')
    .addColumn('saved_at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('refusals_key', ['study_id', 'edit_id'])
    .execute();
  await db.schema
    .createTable('snapshots')
    .addColumn('study_id', 'text', (column) => column.notNull().references('studies.id'))
    .addColumn('rev', 'integer', (column) => column.notNull())
    .addColumn('document', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('snapshots_key', ['study_id', 'rev'])
    .execute();
}

/** Brings the tables up to date; says `newer` when a later version of the program has been here. @throws on faults of the disk */
export async function migrateTables<T>(db: Kysely<T>): Promise<'ready' | 'newer'> {
  if (await hasUnknownMigration(db)) return 'newer';
  const migrator = new Migrator({ db, provider: { getMigrations: async () => ({ ...migrations }) } });
  const { error } = await migrator.migrateToLatest();
  if (error !== undefined) throw error;
  return 'ready';
}

async function hasUnknownMigration<T>(db: Kysely<T>): Promise<boolean> {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
  if (!tables.some((table) => table.name === 'kysely_migration')) return false;
  const history = db as unknown as Kysely<{ kysely_migration: { name: string } }>;
  const done = await history.selectFrom('kysely_migration').select('name').execute();
  return done.some(({ name }) => !(name in migrations));
}
