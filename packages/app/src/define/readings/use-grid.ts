import { useEffect, useMemo, useRef, useState } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import { type GridNow, judgingActions, movingActions, writingActions } from './grid-actions.ts';
import { currentCell, within } from './grid-cells.ts';
import type { Cursor } from './grid-columns.ts';
import type { GridModel } from './grid-model.ts';
import type { Asking, Grid, OpenCell, WrongCell } from './grid-state.ts';

/** The state of the table of readings: where the cursor stands, the open cell, and what could not be taken. */
export function useGrid(desk: RecordDesk, model: GridModel): Grid {
  const [place, setPlace] = useState<Cursor>({ line: 0, column: 0 });
  const [open, setOpen] = useState<OpenCell>();
  const [wrong, setWrong] = useState<ReadonlyMap<string, WrongCell>>(new Map());
  const [asking, setAsking] = useState<Asking>();
  const cursor = useMemo(() => within(place, model), [place, model]);
  const here = currentCell(model, cursor);
  const latest = useRef<GridNow>({ model, cursor, open, wrong, here, asking });
  latest.current = { model, cursor, open, wrong, here, asking };
  const { id } = model.timeStudy;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another study begins anew
  useEffect(() => {
    setPlace({ line: 0, column: 0 });
    setOpen(undefined);
    setWrong(new Map());
    setAsking(undefined);
  }, [id]);
  const actions = useMemo(() => {
    const box = {
      now: () => latest.current,
      closed: () => {
        latest.current = { ...latest.current, open: undefined };
      },
      perform: (edit: Parameters<RecordDesk['dispatch']>[0] | undefined) => {
        if (edit !== undefined) desk.dispatch(edit);
      },
      say: (words: string) => desk.say(words),
      setPlace,
      setOpen,
      setWrong,
      setAsking,
    };
    return { ...movingActions(box), ...writingActions(box), ...judgingActions(box) };
  }, [desk]);
  return { model, cursor, open, wrong, asking, ...actions };
}
