import type { TimeStudySheet } from '@evenhand/core/define';
import type { TimeStudy } from '@evenhand/core/ground/study';
import { type RefObject, useEffect, useImperativeHandle, useMemo, useRef, useState } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import { CellLine } from './cell-line.tsx';
import { currentCell } from './grid-cells.ts';
import { gridModel, lineOf } from './grid-model.ts';
import { PasteDialog } from './paste-dialog.tsx';
import { paste } from './pasted.ts';
import { ReadingGrid } from './reading-grid.tsx';
import { ReadingsHead } from './readings-head.tsx';
import { useGrid } from './use-grid.ts';
import { WrongList } from './wrong-list.tsx';

/** Where a fault or a note leads. */
export interface ReadingsHandle {
  readonly goTo: (element: string, cycle: number | undefined) => void;
}

/** The readings of the open time study: the table, and beneath it the current cell in words. */
export function ReadingsSection(props: {
  readonly desk: RecordDesk;
  readonly timeStudy: TimeStudy;
  readonly sheet: TimeStudySheet;
  readonly handle: RefObject<ReadingsHandle | null>;
  readonly onName: (element: string) => void;
}) {
  const { desk, timeStudy, sheet } = props;
  const [ratings, setAsked] = useRatingsShown(timeStudy);
  const model = useMemo(() => gridModel(timeStudy, sheet, ratings), [timeStudy, sheet, ratings]);
  const grid = useGrid(desk, model);
  const host = useRef<HTMLDivElement>(null);
  const [pasting, setPasting] = useState(false);
  const focus = () => host.current?.focus({ preventScroll: true });
  useImperativeHandle(props.handle, () => ({
    goTo: (element, cycle) => {
      const line = lineOf(model, element);
      const column = cycle === undefined ? 0 : Math.max(0, model.cycles.indexOf(cycle));
      if (line < 0) return;
      grid.goTo({ line, column });
      host.current?.scrollIntoView({ block: 'nearest' });
      focus();
    },
  }));
  const takePaste = (text: string, turned: boolean) => {
    grid.drop();
    const taken = paste(model, grid.cursor, text, turned, () => crypto.randomUUID());
    const held = taken.edit === undefined || desk.dispatch(taken.edit);
    grid.setWrong(taken.wrong);
    if (held) desk.say(taken.words);
    focus();
  };
  const onAside = () => {
    const cell = currentCell(model, grid.cursor);
    if (cell?.reading?.us === undefined) desk.say('There is no time here to set aside.');
    else if (cell.reading.setAside !== undefined) grid.countAgain();
    else grid.ask('reading');
  };
  return (
    <section className="readings" aria-label="Readings">
      <ReadingsHead
        desk={desk}
        model={model}
        ratings={ratings}
        onRatings={setAsked}
        onPaste={() => setPasting(true)}
      />
      {model.lines.length === 0 ? (
        <p className="soft empty-table">
          No element yet. Name the first one above, or paste a table with the names of the elements in its
          first line.
        </p>
      ) : (
        <>
          <ReadingGrid
            grid={grid}
            sheet={sheet}
            host={host}
            onPaste={takePaste}
            onName={props.onName}
            onAside={onAside}
          />
          <CellLine grid={grid} onDone={focus} />
          <WrongList grid={grid} onGo={focus} />
        </>
      )}
      {pasting ? (
        <PasteDialog
          onClose={() => setPasting(false)}
          onPaste={(text, turned) => {
            setPasting(false);
            takePaste(text, turned);
          }}
        />
      ) : null}
    </section>
  );
}

/** Ratings of single readings are shown where there are some, until a person says otherwise. */
function useRatingsShown(timeStudy: TimeStudy) {
  const rated = useMemo(() => hasRatings(timeStudy), [timeStudy]);
  const [asked, setAsked] = useState<boolean>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: another study has its own ratings
  useEffect(() => setAsked(undefined), [timeStudy.id]);
  return [asked ?? rated, setAsked] as const;
}

function hasRatings({ elements }: TimeStudy): boolean {
  return elements.some(({ readings }) => readings.some(({ rating }) => rating !== undefined));
}
