import type { MethodReading, Trace } from '@evenhand/core/examine';
import { countText } from '@evenhand/core/ground/units';
import { useMemo, useState } from 'react';
import { randomId } from '../../editor/page-ports.ts';
import type { RecordDesk } from '../../record/desk.ts';
import { useLook, usePreferences } from '../../shell/preferences.ts';
import { CriticalDetails } from '../critical-panel.tsx';
import { type Occurrence, occurrencesOf, occurrenceWords, windowOf } from '../occurrences.ts';
import { FiguresPanel } from './figures-panel.tsx';

/** The figures beside the film: choosing one plays the first place where it shows, and leads on to the others. */
export function FiguresSide(props: { readonly desk: RecordDesk; readonly reading: MethodReading }) {
  const { desk, reading } = props;
  const { unit } = usePreferences();
  const look = useLook();
  const [chosen, setChosen] = useState<{
    readonly reading: MethodReading;
    readonly traces: readonly Trace[];
  }>();
  const [turn, setTurn] = useState(0);
  const traces = chosen?.reading === reading ? chosen.traces : undefined;
  const occurrences = useMemo(
    () => (traces === undefined ? undefined : occurrencesOf(traces, reading.clock)),
    [traces, reading],
  );
  const show = (all: readonly Occurrence[], wanted: number) => {
    const at = all.length === 0 ? 0 : (wanted + all.length) % all.length;
    const shown = all[at];
    setTurn(at);
    if (shown === undefined) return;
    const window = windowOf(reading, shown);
    desk.score?.zoomTo(window.from, window.to);
    desk.showSpans(
      near(all, shown, window).flatMap((item) => item.traces),
      shown,
    );
  };
  const choose = (next: readonly Trace[]) => {
    if (next.length === 0) return desk.say('There are no frames behind this figure.');
    desk.say(undefined);
    setChosen({ reading, traces: next });
    show(occurrencesOf(next, reading.clock), 0);
  };
  const close = () => {
    setChosen(undefined);
    desk.hideSpans();
  };
  return (
    <>
      <FiguresPanel
        reading={reading}
        unit={unit}
        look={look}
        onTrace={choose}
        onEdit={(edit) => desk.dispatch(edit)}
        newId={randomId}
        examination={(element) => (
          <CriticalDetails
            desk={desk}
            subject={{ kind: 'element', method: reading.method.id, element }}
            what="of this element"
          />
        )}
      />
      {occurrences === undefined ? null : (
        <Shown
          reading={reading}
          occurrences={occurrences}
          turn={turn}
          onShow={(next) => show(occurrences, next)}
          onClose={close}
        />
      )}
    </>
  );
}

/** Places of the same cycle that are in sight with the one that is played. */
function near(
  all: readonly Occurrence[],
  shown: Occurrence,
  window: { readonly from: number; readonly to: number },
): readonly Occurrence[] {
  return all.filter(({ cycle, from, to }) => cycle === shown.cycle && from < window.to && to > window.from);
}

function Shown(props: {
  readonly reading: MethodReading;
  readonly occurrences: readonly Occurrence[];
  readonly turn: number;
  readonly onShow: (turn: number) => void;
  readonly onClose: () => void;
}) {
  const { occurrences, turn, reading } = props;
  const { unit } = usePreferences();
  const shown = occurrences[turn];
  return (
    <section className="shown-traces" aria-label="On the film">
      <span role="status">
        {shown === undefined
          ? 'Nothing to show'
          : `${turn + 1} of ${countText(occurrences.length, 'place')}: ${occurrenceWords(reading, shown, unit)}`}
      </span>
      <span className="actions">
        <button type="button" disabled={occurrences.length < 2} onClick={() => props.onShow(turn - 1)}>
          Before
        </button>
        <button type="button" disabled={occurrences.length < 2} onClick={() => props.onShow(turn + 1)}>
          Next
        </button>
        <button type="button" onClick={props.onClose}>
          Stop
        </button>
      </span>
    </section>
  );
}
