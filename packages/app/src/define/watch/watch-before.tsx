import type { TimeStudy } from '@evenhand/core/ground/study';
import { type TimeUnit, timeUnits } from '@evenhand/core/ground/units';
import type { RecordDesk } from '../../record/desk.ts';
import { changeTimeStudy } from '../define-edits.ts';
import type { BenchWatch, WatchShown } from './bench-watch.ts';

const units: readonly TimeUnit[] = ['minutes', 'seconds', 'tmu', 'winks'];

/** What is settled before the watch begins: how it goes, in which unit, who is timed, where in the cycle it begins. */
export function WatchBefore(props: {
  readonly desk: RecordDesk;
  readonly bench: BenchWatch;
  readonly shown: WatchShown;
  readonly timeStudy: TimeStudy;
  readonly code: string;
  readonly onCode: (code: string) => void;
}) {
  const { desk, timeStudy, code, onCode } = props;
  const change = (to: Parameters<typeof changeTimeStudy>[1]) => {
    const edit = changeTimeStudy(timeStudy, to);
    if (edit !== undefined) desk.dispatch(edit);
  };
  return (
    <section className="watch-before" aria-label="Before the watch begins">
      <Interrupted shown={props.shown} timeStudy={timeStudy} />
      <Timing timeStudy={timeStudy} onChange={change} />
      <div className="watch-fields">
        <label>
          <span>Unit</span>
          <select
            value={timeStudy.unit}
            onChange={({ target }) => change({ unit: target.value as TimeUnit })}
          >
            {[...new Set([...units, timeStudy.unit])].map((unit) => (
              <option key={unit} value={unit}>
                {timeUnits[unit].name}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>Operator code</span>
          <input
            value={code}
            maxLength={200}
            placeholder="a code, no name"
            onChange={(event) => onCode(event.target.value)}
          />
        </label>
        <BeginsWith {...props} />
      </div>
    </section>
  );
}

function Timing(props: {
  readonly timeStudy: TimeStudy;
  readonly onChange: (to: { source: TimeStudy['source'] }) => void;
}) {
  const { source } = props.timeStudy;
  if (source.kind !== 'readings') return null;
  const isRepetitive = source.timing === 'repetitive';
  const choose = (timing: 'continuous' | 'repetitive') => () =>
    props.onChange({ source: { ...source, timing } });
  return (
    <fieldset className="watch-timing">
      <legend className="hidden">How the watch goes</legend>
      <label>
        <input type="radio" checked={!isRepetitive} onChange={choose('continuous')} />
        <span>
          Runs on <small>a missed reading leaves two elements without a time</small>
        </span>
      </label>
      <label>
        <input type="radio" checked={isRepetitive} onChange={choose('repetitive')} />
        <span>
          Back to zero <small>a missed reading leaves one; the next begins with that press</small>
        </span>
      </label>
    </fieldset>
  );
}

function Interrupted(props: { readonly shown: WatchShown; readonly timeStudy: TimeStudy }) {
  const { broken, watch } = props.shown;
  if (broken === undefined) return null;
  const element = props.timeStudy.elements.find(({ id }) => id === broken.element);
  return (
    <p className="watch-note" role="status">
      Timing was interrupted in cycle {broken.cycle}
      {element === undefined ? '' : `, during “${element.name}”`}. Every reading before it is kept; the watch
      goes on with cycle {watch.cycle}.
    </p>
  );
}

/** A watch may begin in the middle of a cycle; what was over then has no reading in it. */
function BeginsWith(props: {
  readonly bench: BenchWatch;
  readonly shown: WatchShown;
  readonly timeStudy: TimeStudy;
}) {
  const { bench, shown, timeStudy } = props;
  const { order } = shown.watch.plan;
  if (order.length < 2) return null;
  return (
    <label>
      <span>Begins with</span>
      <select
        value={shown.watch.done.length}
        onChange={({ target }) => {
          bench.beginAfter(timeStudy, order.slice(0, Number(target.value)));
          target.blur();
        }}
      >
        {order.map((id, index) => (
          <option key={id} value={index}>
            {timeStudy.elements.find((element) => element.id === id)?.name}
          </option>
        ))}
      </select>
    </label>
  );
}
