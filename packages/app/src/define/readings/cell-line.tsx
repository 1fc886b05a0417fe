import { useEffect, useRef, useState } from 'react';
import { currentCell } from './grid-cells.ts';
import { cellView, cellWords } from './grid-model.ts';
import type { Grid } from './grid-state.ts';

/** The cell in which the cursor stands, in words, and what can be done with it. */
export function CellLine(props: { readonly grid: Grid; readonly onDone: () => void }) {
  const { grid, onDone } = props;
  const { model, asking } = grid;
  const cell = currentCell(model, grid.cursor);
  if (cell === undefined) return null;
  const time = model.lines.find((line) => line.element === cell.line.element && line.kind === 'time');
  const view = time === undefined ? undefined : cellView(model, time, cell.cycle);
  const { reading } = cell;
  const wrong = grid.wrong.get(cell.key);
  const record = model.timeStudy.source.kind === 'record';
  const act = (action: () => void) => () => {
    action();
    onDone();
  };
  return (
    <div className="cell-line">
      <p className="cell-words" aria-live="polite">
        {cellWords(model, cell.line, cell.cycle)}{' '}
        {reading?.setAside === undefined ? null : (
          <span className="aside">Set aside, because: {reading.setAside}.</span>
        )}
        {wrong === undefined ? null : <span className="fault-text">{wrong.message}</span>}
        {view?.proposal === undefined ? null : <span className="proposal">{view.proposal}</span>}
      </p>
      {asking === undefined ? (
        <div className="actions">
          {reading?.us === undefined ? null : reading.setAside !== undefined ? (
            <button type="button" onClick={act(grid.countAgain)}>
              Count it again <kbd>A</kbd>
            </button>
          ) : (
            <button
              type="button"
              className={view?.proposal === undefined ? '' : 'primary'}
              onClick={() => grid.ask('reading')}
            >
              Set aside … <kbd>A</kbd>
            </button>
          )}
          <button type="button" onClick={() => grid.ask('cycle')}>
            {model.asideCycles.has(cell.cycle) ? `Count cycle ${cell.cycle} again` : 'The whole cycle …'}{' '}
            <kbd>Shift A</kbd>
          </button>
          {record ? null : (
            <>
              <button type="button" onClick={act(grid.missed)}>
                Missed <kbd>M</kbd>
              </button>
              <button
                type="button"
                disabled={reading === undefined && wrong === undefined}
                onClick={act(grid.clear)}
              >
                Clear <kbd>Del</kbd>
              </button>
            </>
          )}
        </div>
      ) : (
        <ReasonField
          key={`${cell.key} ${asking}`}
          label={
            asking === 'cycle' ? `Why is cycle ${cell.cycle} set aside?` : `Why is this reading set aside?`
          }
          onGive={act2(grid.setAside, onDone)}
          onDrop={act(() => grid.ask(undefined))}
        />
      )}
    </div>
  );
}

function act2(action: (reason: string) => void, done: () => void) {
  return (reason: string) => {
    action(reason);
    done();
  };
}

function ReasonField(props: {
  readonly label: string;
  readonly onGive: (reason: string) => void;
  readonly onDrop: () => void;
}) {
  const [reason, setReason] = useState('');
  const [empty, setEmpty] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.focus(), []);
  return (
    <form
      className="reason"
      onSubmit={(event) => {
        event.preventDefault();
        if (reason.trim() === '') setEmpty(true);
        else props.onGive(reason);
      }}
    >
      <label>
        <span>{props.label}</span>
        <input
          ref={input}
          value={reason}
          maxLength={200}
          placeholder="such as: part fell and was picked up"
          aria-invalid={empty}
          onChange={(event) => {
            setReason(event.target.value);
            setEmpty(false);
          }}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            event.preventDefault();
            event.stopPropagation();
            props.onDrop();
          }}
        />
      </label>
      <button type="submit" className="primary">
        Set aside
      </button>
      <button type="button" onClick={props.onDrop}>
        Leave it
      </button>
      {empty ? (
        <span className="fault-text" role="alert">
          Nothing is set aside without a reason: write what happened.
        </span>
      ) : null}
    </form>
  );
}
