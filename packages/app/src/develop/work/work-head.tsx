import type { KeptWork } from '@evenhand/core/ground/study';
import { CheckedField } from '../../define/checked-field.tsx';
import { readNumber } from '../../define/field-numbers.ts';
import type { RecordDesk } from '../../record/desk.ts';
import { changeWork, repeatUnits } from './work-edits.ts';

/** What holds for the work as a whole: how many units leave in a cycle, and where the hands begin. */
export function WorkHead(props: { readonly desk: RecordDesk; readonly kept: KeptWork }) {
  const { desk, kept } = props;
  const { work } = kept;
  const { home, places, unitsPerCycle } = work;
  const setHome = (next: typeof home) => {
    const edit = changeWork(kept, { home: next });
    if (edit !== undefined) desk.dispatch(edit);
  };
  const first = places[0]?.id ?? '';
  return (
    <header className="work-head">
      <h2>The work</h2>
      <p className="soft">
        {work.steps.length === 1 ? '1 step' : `${work.steps.length} steps`}; moves between places are found
        with the method.
      </p>
      <div className="field-pair">
        <CheckedField
          label="Units a cycle"
          value={String(unitsPerCycle)}
          read={readNumber({ least: 1, most: 12, whole: true })}
          onCommit={(units) => {
            const edit = repeatUnits(kept, units);
            if (edit !== undefined) desk.dispatch(edit);
          }}
        />
        <label className="step-choice">
          <span className="label">Hands begin</span>
          <select
            value={home === 'free' ? 'free' : 'fixed'}
            onChange={(event) =>
              setHome(event.target.value === 'free' ? 'free' : { left: first, right: first })
            }
          >
            <option value="free">anywhere</option>
            <option value="fixed">at set places</option>
          </select>
        </label>
      </div>
      {home === 'free' ? null : (
        <div className="field-pair">
          {(['left', 'right'] as const).map((hand) => (
            <label className="step-choice" key={hand}>
              <span className="label">{hand === 'left' ? 'Left hand' : 'Right hand'}</span>
              <select
                value={home[hand]}
                onChange={(event) => setHome({ ...home, [hand]: event.target.value })}
              >
                {places.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          ))}
        </div>
      )}
    </header>
  );
}
