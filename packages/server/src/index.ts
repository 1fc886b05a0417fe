export type { Demo } from './demo.ts';
export { type FilmPage, type PageMessage, serveFilmPage } from './film-page.ts';
export { type RunningServer, type ServerOptions, startServer } from './start-server.ts';
