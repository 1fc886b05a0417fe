import type { MethodReading } from '@evenhand/core/examine';
import { cycleWords } from '@evenhand/core/examine';
import { countText, type TimeUnit, timeText, timeUnitNames, timeUnits } from '@evenhand/core/ground/units';
import { CommitField } from '../record/commit-field.tsx';
import type { RecordDesk } from '../record/desk.ts';
import { CommandButton } from '../record/transport.tsx';
import { useDesk, useDocument, usePlayer } from '../record/use-desk.ts';
import { preferences, usePreferences } from '../shell/preferences.ts';
import type { ExamineView } from './examine-desk-view.tsx';
import type { Examined } from './examined.ts';

const views: readonly (readonly [ExamineView, string])[] = [
  ['leads', 'Leads'],
  ['figures', 'Figures'],
  ['compare', 'Before and after'],
];

/** Above the desk: what is shown, of which method and cycles, and the keys of the film. */
export function ExamineBar(props: {
  readonly desk: RecordDesk;
  readonly view: ExamineView;
  readonly onView: (view: ExamineView) => void;
  readonly cycles: string;
  readonly onCycles: (text: string) => void;
  readonly examined: Examined | undefined;
}) {
  const { desk, view } = props;
  const { methodId } = useDesk(desk);
  const { study } = useDocument(desk);
  const { unit } = usePreferences();
  return (
    <section className="examine-bar" aria-label="What is examined">
      <div className="tabs" role="group" aria-label="View">
        {views.map(([name, title]) => (
          <button key={name} type="button" aria-pressed={view === name} onClick={() => props.onView(name)}>
            {title}
          </button>
        ))}
      </div>
      {view === 'compare' ? null : (
        <>
          <label className="inline-choice">
            <span>Method</span>
            <select value={methodId} onChange={(event) => desk.chooseMethod(event.target.value)}>
              {study.methods.map((method) => (
                <option key={method.id} value={method.id}>
                  {method.name}
                </option>
              ))}
            </select>
          </label>
          <div className="cycle-choice">
            <CommitField
              label="Cycles"
              value={props.cycles}
              placeholder="all, or 1-4, 6"
              onCommit={(text) => props.onCycles(text.trim())}
            />
          </div>
          {props.examined?.kind === 'read' ? <Counted reading={props.examined.reading} unit={unit} /> : null}
          <FilmKeys desk={desk} />
        </>
      )}
      <label className="inline-choice">
        <span className="hidden">Unit of time</span>
        <select
          value={unit}
          onChange={(event) => preferences.change({ unit: event.target.value as TimeUnit })}
        >
          {timeUnitNames.map((name) => (
            <option key={name} value={name}>
              {timeUnits[name].name}
            </option>
          ))}
        </select>
      </label>
    </section>
  );
}

function Counted(props: { readonly reading: MethodReading; readonly unit: TimeUnit }) {
  const { cycles, method } = props.reading;
  const numbers = cycles.map(({ number }) => number);
  const all = method.cycles.items.length;
  const [only] = cycles;
  const words =
    numbers[0] === 0
      ? `the whole record as one cycle of ${only === undefined ? '' : timeText(only.duration, props.unit)}`
      : `${cycleWords(numbers)} (${numbers.length} of ${all}), ${countText(method.unitsPerCycle, 'unit')} a cycle`;
  return <span className="soft">{words}</span>;
}

function FilmKeys(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const player = usePlayer(desk);
  if (player === undefined) return null;
  return (
    <div className="moves">
      <CommandButton desk={desk} id="film.step-back" text="◂" />
      <CommandButton desk={desk} id="film.play" text={player.playing ? 'Pause' : 'Play'} />
      <CommandButton desk={desk} id="film.step-forward" text="▸" />
      <CommandButton desk={desk} id="score.fit" text="Whole film" />
    </div>
  );
}
