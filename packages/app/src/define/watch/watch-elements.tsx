import { runningElement, type SheetRow } from '@evenhand/core/define';
import { micros } from '@evenhand/core/ground/base';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import { percentText, timeNumber, timeUnits } from '@evenhand/core/ground/units';
import { useEffect, useRef } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import type { BenchWatch, WatchShown } from './bench-watch.ts';
import { useLiveSheet } from './use-live-sheet.ts';
import { ElementNames, NewElement } from './watch-names.tsx';
import { onPress } from './watch-presses.ts';

/** The elements: how many readings there are against how many it takes, and which of them runs. They can be named meanwhile. */
export function WatchElements(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly bench: BenchWatch;
  readonly shown: WatchShown;
  readonly timeStudy: TimeStudy;
  readonly changing: boolean;
  readonly onChanging: (changing: boolean) => void;
}) {
  const { desk, bench, shown, timeStudy, changing } = props;
  const sheet = useLiveSheet(props.study, timeStudy);
  const rows = new Map(sheet.rows.map((row) => [row.element.id, row]));
  return (
    <section className="watch-elements" aria-label="Elements">
      {changing ? (
        <ElementNames desk={desk} bench={bench} shown={shown} timeStudy={timeStudy} />
      ) : (
        <ElementTable bench={bench} shown={shown} timeStudy={timeStudy} rows={rows} />
      )}
      {changing || timeStudy.elements.length === 0 ? <NewElement desk={desk} timeStudy={timeStudy} /> : null}
      {timeStudy.elements.length === 0 ? null : (
        <p className="watch-under">
          <span>{changing ? '' : 'Press an element that ended out of its turn.'}</span>
          <button type="button" className="quiet" onClick={() => props.onChanging(!changing)}>
            {changing ? 'Back to the figures' : 'Names and order'}
          </button>
        </p>
      )}
    </section>
  );
}

function ElementTable(props: {
  readonly bench: BenchWatch;
  readonly shown: WatchShown;
  readonly timeStudy: TimeStudy;
  readonly rows: ReadonlyMap<string, SheetRow>;
}) {
  const { bench, shown, timeStudy, rows } = props;
  const { watch, leftOut } = shown;
  const now = watch.phase === 'running' || watch.phase === 'paused' ? runningElement(watch) : undefined;
  const row = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    if (now !== undefined && row.current !== null)
      bringInto(row.current.closest('.watch-middle'), row.current);
  }, [now]);
  if (timeStudy.elements.length === 0) return null;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Element</th>
          <th scope="col">mean, {timeUnits[timeStudy.unit].symbol}</th>
          <th scope="col">
            ± <span className="hidden">reached</span>
          </th>
          <th scope="col">of needed</th>
        </tr>
      </thead>
      <tbody>
        {timeStudy.elements.map((element, index) => (
          <tr
            key={element.id}
            ref={element.id === now ? row : undefined}
            aria-current={element.id === now ? 'true' : undefined}
          >
            <th scope="row">
              <button
                type="button"
                className="quiet"
                disabled={watch.phase !== 'running' || leftOut.has(element.id)}
                title={index < 10 ? `What ended was this element (${(index + 1) % 10})` : undefined}
                {...onPress((at) => bench.press({ do: 'read-as', element: element.id, at }))}
              >
                <small>{index < 10 ? (index + 1) % 10 : ''}</small>
                <span>
                  {element.name}
                  {leftOut.has(element.id) ? <small> not timed now</small> : null}
                  {element.occurs === undefined ? null : (
                    <small>
                      {' '}
                      {element.occurs.times} in {element.occurs.cycles}
                    </small>
                  )}
                </span>
              </button>
            </th>
            <ElementFigures row={rows.get(element.id)} timeStudy={timeStudy} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Scrolls the part of the page that it lies in, never the page: the presses stay where the thumb is. */
function bringInto(port: Element | null, row: Element): void {
  if (port === null) return;
  const [outer, inner] = [port.getBoundingClientRect(), row.getBoundingClientRect()];
  if (inner.top < outer.top) port.scrollTop -= outer.top - inner.top;
  else if (inner.bottom > outer.bottom) port.scrollTop += inner.bottom - outer.bottom;
}

function ElementFigures(props: { readonly row: SheetRow | undefined; readonly timeStudy: TimeStudy }) {
  const { row, timeStudy } = props;
  const { unit } = timeStudy;
  const { summary, needed, reached } = row ?? {};
  const mean = summary === undefined ? undefined : Math.round(summary.mean * timeUnits[unit].microseconds);
  const enough = needed !== undefined && needed.more === 0;
  return (
    <>
      <td>{mean === undefined ? '' : timeNumber(micros(mean), unit)}</td>
      <td>{reached === undefined ? '' : percentText(reached.share)}</td>
      <td className={enough ? 'enough' : undefined}>
        {summary?.n ?? 0} of {needed?.needed ?? '–'}
        {enough ? <span className="hidden">, enough</span> : null}
      </td>
    </>
  );
}
