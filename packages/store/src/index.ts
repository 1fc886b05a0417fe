export { defaultDataFolder, type Surroundings } from './data-folder.ts';
export type { FilmRecord, FilmRecords, UploadRecord } from './films/film-records.ts';
export type { FilmStore, SweepReport, Upload } from './films/film-store.ts';
export { isHash } from './films/folder-film-store.ts';
export { sniffMediaType } from './films/media-type.ts';
export { TooManyBytes } from './films/upload-folder.ts';
export { MemoryStore } from './memory-store.ts';
export { type DataStore, type OpenOptions, openStore } from './open-store.ts';
export { hasBuiltIn, openConnection, type SqliteConnection, type SqliteDriver } from './sqlite/connection.ts';
export { SqliteStore } from './sqlite/sqlite-store.ts';
export type {
  BatchOutcome,
  Clock,
  EditBatch,
  EditOutcome,
  KeptEdit,
  LoadedStudy,
  SentEdit,
  StudyStore,
  StudySummary,
} from './study-store.ts';
export type { TrackStore } from './tracks/track-store.ts';
