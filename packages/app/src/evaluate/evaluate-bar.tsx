import { cycleWords } from '@evenhand/core/examine';
import { fail, ok } from '@evenhand/core/ground/base';
import type { Comparison, Study } from '@evenhand/core/ground/study';
import { useState } from 'react';
import { CheckedField } from '../define/checked-field.tsx';
import { readPercent } from '../define/field-numbers.ts';
import type { RecordDesk } from '../record/desk.ts';
import { keepOpen } from '../shell/route.ts';
import { changeComparison, comparisonName, newComparison, readCycles } from './comparison-edits.ts';
import { type Side, sides } from './film-pair.ts';

/** Above the desk: which comparison is open, and which cycles of which methods it compares. */
export function EvaluateBar(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly open: Comparison;
}) {
  const { desk, study, open } = props;
  const [renaming, setRenaming] = useState(false);
  const comparisons = study.comparisons ?? [];
  const change = (to: Parameters<typeof changeComparison>[1]) => {
    const edit = changeComparison(open, to);
    if (edit !== undefined) desk.dispatch(edit);
  };
  const begin = () => {
    const made = newComparison(study, crypto.randomUUID());
    if (made !== undefined && desk.dispatch({ type: 'comparison.add', comparison: made })) keepOpen(made.id);
  };
  const remove = () => {
    if (!desk.dispatch({ type: 'comparison.remove', comparison: open })) return;
    keepOpen(undefined);
    desk.say('The comparison was removed. Undo brings it back.');
  };
  return (
    <section className="evaluate-bar" aria-label="Comparison">
      {renaming ? (
        <CheckedField
          label="Name"
          value={open.name ?? ''}
          placeholder={comparisonName(study, open)}
          read={(text) => ok(text.trim())}
          onCommit={(name) => {
            change({ name: name === '' ? null : name });
            setRenaming(false);
          }}
        />
      ) : (
        <label className="inline-choice">
          <span>Comparison</span>
          <select value={open.id} onChange={(event) => keepOpen(event.target.value)}>
            {comparisons.map((item) => (
              <option key={item.id} value={item.id}>
                {comparisonName(study, item)}
              </option>
            ))}
          </select>
        </label>
      )}
      <div className="actions">
        <button type="button" onClick={begin}>
          New
        </button>
        <button type="button" onClick={() => setRenaming(!renaming)}>
          {renaming ? 'Leave the name' : 'Rename'}
        </button>
        <button type="button" onClick={remove}>
          Remove
        </button>
      </div>
      {sides.map((side) => (
        <SideChoice key={side} desk={desk} study={study} open={open} side={side} />
      ))}
      <button
        type="button"
        title="What was before becomes after"
        onClick={() => change({ before: open.after, after: open.before })}
      >
        Exchange
      </button>
      <CheckedField
        label="Confidence"
        value={String(Math.round(open.confidence * 1e6) / 1e4)}
        unit="%"
        read={(text) => {
          const read = readPercent({ above: 50, below: 100 })(text);
          return read.ok ? read : fail(read.error);
        }}
        onCommit={(confidence) => change({ confidence })}
      />
    </section>
  );
}

function SideChoice(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly open: Comparison;
  readonly side: Side;
}) {
  const { desk, study, open, side } = props;
  const chosen = open[side];
  const other = side === 'before' ? 'after' : 'before';
  const method = study.methods.find(({ id }) => id === chosen.method);
  const choose = (id: string) => {
    // The two stay two: choosing the other side's method exchanges them.
    const edit =
      id === open[other].method
        ? changeComparison(open, { before: open.after, after: open.before })
        : changeComparison(open, { [side]: { method: id } });
    if (edit !== undefined) desk.dispatch(edit);
  };
  return (
    <div className="side-choice" role="group" aria-label={side === 'before' ? 'Before' : 'After'}>
      <label className="inline-choice">
        <span>{side === 'before' ? 'Before' : 'After'}</span>
        <select value={chosen.method} onChange={(event) => choose(event.target.value)}>
          {study.methods.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <CheckedField
        label={`Cycles ${side}`}
        bare
        value={chosen.cycles === undefined ? '' : cyclesText(chosen.cycles)}
        placeholder="all cycles"
        read={(text) => readCycles(text, method)}
        onCommit={(cycles) => {
          const edit = changeComparison(open, {
            [side]: { method: chosen.method, ...(cycles === undefined ? {} : { cycles }) },
          });
          if (edit !== undefined) desk.dispatch(edit);
        }}
      />
    </div>
  );
}

function cyclesText(cycles: readonly number[]): string {
  return cycleWords(cycles)
    .replace(/^cycles? /, '')
    .replaceAll('–', '-');
}
