import { useEffect, useRef, useState } from 'react';
import { usePreferences } from '../shell/preferences.ts';
import { FilmSurface } from '../surfaces/film/film-surface.ts';
import { AddFilm, FilmMissing } from './add-film.tsx';
import type { RecordDesk } from './desk.ts';
import { DeskMessage } from './desk-message.tsx';
import { KeyDialog } from './key-dialog.tsx';
import { KeyHalf } from './key-half.tsx';
import { ReviewStrip } from './proposals/review-strip.tsx';
import { ScoreView } from './score-view.tsx';
import { SidePanel } from './side-panel.tsx';
import { FilmOverlay } from './tracks/film-overlay.tsx';
import { Transport } from './transport.tsx';
import { useDesk, useDocument } from './use-desk.ts';
import { useDeskKeys } from './use-desk-keys.ts';

/** The record desk: the film between the two halves of the keyboard, the two-hand score below, the details at the side. */
export function RecordDeskView(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const state = useDesk(desk);
  useDocument(desk);
  const { showKeys } = usePreferences();
  const [keysOpen, setKeysOpen] = useState(false);
  useDeskKeys(desk);
  useEffect(() => {
    const onHelp = (event: KeyboardEvent) => {
      if (event.code !== 'F1') return;
      event.preventDefault();
      setKeysOpen(true);
    };
    window.addEventListener('keydown', onHelp);
    return () => window.removeEventListener('keydown', onHelp);
  }, []);
  const method = desk.method;
  return (
    <main className={showKeys ? 'record-desk' : 'record-desk no-keys'}>
      <section className="stage" aria-label="Film">
        {showKeys ? <KeyHalf desk={desk} hand="left" /> : null}
        <div className="film">
          {method === undefined ? <AddFilm desk={desk} first /> : <FilmView desk={desk} />}
          <FilmOverlay desk={desk} />
        </div>
        {showKeys ? <KeyHalf desk={desk} hand="right" /> : null}
      </section>
      <SidePanel desk={desk} />
      <Transport desk={desk} onKeys={() => setKeysOpen(true)} />
      <ReviewStrip desk={desk} />
      <ScoreView desk={desk} />
      <DeskMessage text={state.message} onDismiss={() => desk.say(undefined)} />
      {keysOpen ? <KeyDialog onClose={() => setKeysOpen(false)} /> : null}
    </main>
  );
}

export function FilmView(props: { readonly desk: RecordDesk }) {
  const { film } = useDesk(props.desk);
  const host = useRef<HTMLDivElement>(null);
  const surface = useRef<FilmSurface>(undefined);
  const player = film.kind === 'open' ? film.player : undefined;
  const label = film.kind === 'none' ? 'No film' : `Film ${film.film.name}`;
  useEffect(() => {
    if (host.current === null) return;
    const made = new FilmSurface(host.current, label);
    surface.current = made;
    return () => {
      made.dispose();
      surface.current = undefined;
    };
  }, [label]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new surface (label) needs the player as well
  useEffect(() => surface.current?.show(player), [player, label]);
  return (
    <>
      <div className="film-canvas" ref={host} data-film={film.kind} />
      {film.kind === 'opening' ? <p className="film-note">Opening {film.film.name} …</p> : null}
      {film.kind === 'failed' ? (
        <FilmMissing desk={props.desk} film={film.film} findings={film.findings} />
      ) : null}
      {film.kind === 'none' ? (
        <p className="film-note">This method has no film. Its motions can be seen and changed below.</p>
      ) : null}
    </>
  );
}
