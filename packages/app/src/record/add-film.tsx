import type { Finding } from '@evenhand/core/ground/findings';
import type { Film } from '@evenhand/core/ground/study';
import { percentText } from '@evenhand/core/ground/units';
import { type DragEvent, useRef, useState } from 'react';
import { FindingsList } from '../shell/findings-list.tsx';
import type { RecordDesk } from './desk.ts';
import { bringBack, type IntakeProgress, takeFilm } from './film-intake.ts';

const accept = 'video/mp4,video/quicktime,video/webm,video/x-matroska,.mp4,.m4v,.mov,.webm,.mkv';

/** Choosing a film: what it needs, what was told to the person filmed, and how far it is. */
export function AddFilm(props: {
  readonly desk: RecordDesk;
  readonly first?: boolean;
  readonly onDone?: () => void;
}) {
  const { desk } = props;
  const [agreed, setAgreed] = useState(false);
  const [operatorCode, setOperatorCode] = useState('');
  const [progress, setProgress] = useState<IntakeProgress>();
  const [findings, setFindings] = useState<readonly Finding[]>([]);
  const abort = useRef<AbortController>(undefined);

  const take = async (file: File | undefined) => {
    if (file === undefined || progress !== undefined) return;
    abort.current = new AbortController();
    setFindings([]);
    const taken = await takeFilm(desk, file, { operatorCode, agreed }, setProgress, abort.current.signal);
    setProgress(undefined);
    if (!taken.ok) return setFindings(taken.error);
    if (taken.value.length > 0) desk.say(taken.value.map((item) => item.message).join(' '));
    props.onDone?.();
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    void take(event.dataTransfer.files[0]);
  };
  return (
    <section
      className={props.first === true ? 'add-film first' : 'add-film'}
      aria-label="Add a film"
      onDragOver={(event) => event.preventDefault()}
      onDrop={drop}
    >
      {props.first === true ? <h2>Open a film of the operation</h2> : null}
      <p>MP4, MOV, WebM or MKV. Choose it or drop it here; it stays on this machine.</p>
      <label className="check">
        <input type="checkbox" checked={agreed} onChange={(event) => setAgreed(event.target.checked)} />
        The person filmed was told what it is for and agreed.
      </label>
      <label>
        <span>Operator code (never a name)</span>
        <input
          value={operatorCode}
          maxLength={40}
          onChange={(event) => setOperatorCode(event.target.value)}
        />
      </label>
      <label className="file-choice">
        <span>Film</span>
        <input
          type="file"
          accept={accept}
          disabled={progress !== undefined}
          onChange={(event) => {
            void take(event.target.files?.[0]);
            event.target.value = '';
          }}
        />
      </label>
      <IntakeState progress={progress} onCancel={() => abort.current?.abort()} />
      {findings.length > 0 ? (
        <div role="alert">
          <FindingsList findings={findings} />
        </div>
      ) : null}
    </section>
  );
}

function IntakeState(props: {
  readonly progress: IntakeProgress | undefined;
  readonly onCancel: () => void;
}) {
  const { progress } = props;
  if (progress === undefined) return null;
  return (
    <p className="intake" role="status">
      {progress.kind === 'reading' ? (
        'Reading the frames …'
      ) : (
        <>
          <progress value={progress.share} max={1} aria-label="Storing the film" /> Storing the film,{' '}
          {percentText(progress.share, 0)}{' '}
          <button type="button" className="quiet" onClick={props.onCancel}>
            Cancel
          </button>
        </>
      )}
    </p>
  );
}

/** In place of a film that cannot be shown: why, and the way to bring it back. */
export function FilmMissing(props: {
  readonly desk: RecordDesk;
  readonly film: Film;
  readonly findings: readonly Finding[];
}) {
  const { desk, film } = props;
  const [progress, setProgress] = useState<IntakeProgress>();
  const [more, setMore] = useState<readonly Finding[]>([]);
  const abort = useRef<AbortController>(undefined);
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    abort.current = new AbortController();
    const done = await bringBack(desk, film, file, setProgress, abort.current.signal);
    setProgress(undefined);
    if (!done.ok) setMore(done.error);
  };
  return (
    <section className="add-film first" aria-label="The film cannot be shown" role="alert">
      <h2>The film cannot be shown</h2>
      <FindingsList findings={[...props.findings, ...more]} />
      <label className="file-choice">
        <span>Open {film.name} again</span>
        <input type="file" accept={accept} onChange={(event) => void take(event.target.files?.[0])} />
      </label>
      <IntakeState progress={progress} onCancel={() => abort.current?.abort()} />
      <button type="button" onClick={() => desk.reopenFilm()}>
        Try again
      </button>
    </section>
  );
}
