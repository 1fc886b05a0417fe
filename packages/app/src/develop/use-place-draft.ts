import type { KeptWork, Work } from '@evenhand/core/ground/study';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { movePlaces, type Points } from './work/work-edits.ts';

/** How long a place must have been at rest before its move is one step of the history, milliseconds. Ours. */
const atRest = 500;

/**
 * The work with places where a hand has them at the moment. The move as a whole becomes one edit when the place has come
 * to rest, so that undo takes back the move and not its last millimetre.
 */
export function usePlaceDraft(
  desk: RecordDesk,
  kept: KeptWork,
): { readonly work: Work; readonly move: (place: string, at: Points[string]) => void } {
  const [moved, setMoved] = useState<Points>({});
  const onLeave = useRef<() => void>(() => {});
  const latest = useRef({ desk, kept, moved });
  latest.current = { desk, kept, moved };
  useEffect(() => {
    if (Object.keys(moved).length === 0) return;
    const timer = setTimeout(() => onLeave.current(), atRest);
    return () => clearTimeout(timer);
  }, [moved]);
  function keep() {
    const now = latest.current;
    if (Object.keys(now.moved).length === 0) return;
    const edit = movePlaces(now.kept, now.moved);
    latest.current = { ...now, moved: {} };
    setMoved({});
    if (edit !== undefined) now.desk.dispatch(edit);
  }
  // Whatever else is done then, such as taking the last step back, finds the move in the history.
  useEffect(() => {
    const onDown = () => onLeave.current();
    const onKey = ({ key }: KeyboardEvent) => {
      if (!key.startsWith('Arrow') && key !== 'Shift') onLeave.current();
    };
    window.addEventListener('pointerdown', onDown, true);
    window.addEventListener('keydown', onKey, true);
    return () => {
      window.removeEventListener('pointerdown', onDown, true);
      window.removeEventListener('keydown', onKey, true);
    };
  }, []);
  // A move that has not come to rest is kept when the desk is left.
  onLeave.current = keep;
  useEffect(() => () => onLeave.current(), []);
  const work = useMemo(() => withPlaces(kept.work, moved), [kept.work, moved]);
  return { work, move: (place, at) => setMoved((before) => ({ ...before, [place]: at })) };
}

function withPlaces(work: Work, moved: Points): Work {
  if (Object.keys(moved).length === 0) return work;
  const places = work.places.map((place) => {
    const at = moved[place.id];
    return at === undefined ? place : { ...place, at };
  });
  return { ...work, places };
}
