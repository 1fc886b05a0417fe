import { micros } from '@evenhand/core/ground/base';
import type { Edit } from '@evenhand/core/ground/edit';
import type { KeptWork, WorkStep } from '@evenhand/core/ground/study';
import { type TimeUnit, timeText } from '@evenhand/core/ground/units';
import { type KeyboardEvent, useRef, useState } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import type { PlainMethod } from '../developed-plain.ts';
import { StepFields } from './step-fields.tsx';
import { stepSentence } from './step-words.ts';
import { addStep, moveStep, removeStep } from './work-edits.ts';
import type { WorkFaults } from './work-faults.ts';

/** The work as steps: what must be done, without saying by which hand or when. One is opened to be changed. */
export function StepsList(props: {
  readonly desk: RecordDesk;
  readonly kept: KeptWork;
  readonly method: PlainMethod | undefined;
  readonly faults: WorkFaults;
  readonly unit: TimeUnit;
}) {
  const { desk, kept, faults } = props;
  const { work } = kept;
  const [open, setOpen] = useState<string>();
  const list = useRef<HTMLOListElement>(null);
  const take = (edit: Edit | undefined) => edit !== undefined && desk.dispatch(edit);
  const focusNow = (id: string) =>
    list.current?.querySelector<HTMLElement>(`[data-step="${CSS.escape(id)}"]`)?.focus();
  /** After an edit the step has to be painted in its new place first. */
  const focusStep = (id: string) => requestAnimationFrame(() => focusNow(id));
  const add = (behind: WorkStep | undefined) => {
    const edit = addStep(kept, behind);
    if (!take(edit)) return;
    setOpen(edit.step.id);
    focusStep(edit.step.id);
  };
  const remove = (step: WorkStep) => {
    const index = work.steps.indexOf(step);
    const next = work.steps[index + 1] ?? work.steps[index - 1];
    if (take(removeStep(kept, step)) && next !== undefined) focusStep(next.id);
  };
  const onKey = (event: KeyboardEvent, step: WorkStep) => {
    const index = work.steps.indexOf(step);
    const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : 0;
    if (by !== 0 && event.altKey) {
      if (take(moveStep(kept, step, by))) focusStep(step.id);
    } else if (by !== 0) {
      const other = work.steps[index + by];
      if (other !== undefined) focusNow(other.id);
    } else if (event.key === 'Delete') remove(step);
    else if (event.key === 'Insert') add(step);
    else return;
    event.preventDefault();
  };
  return (
    <>
      <ol className="step-list" ref={list}>
        {work.steps.map((step) => (
          <StepItem
            key={step.id}
            {...props}
            step={step}
            faults={faults.ofStep(step.id)}
            open={open === step.id}
            onOpen={() => setOpen(open === step.id ? undefined : step.id)}
            onKey={(event) => onKey(event, step)}
            onMove={(by) => take(moveStep(kept, step, by)) && focusStep(step.id)}
            onRemove={() => remove(step)}
          />
        ))}
      </ol>
      <div className="actions">
        <button
          type="button"
          onClick={() => add(work.steps.find(({ id }) => id === open) ?? work.steps.at(-1))}
        >
          Add a step
        </button>
      </div>
      <p className="soft">
        <kbd>↑</kbd> <kbd>↓</kbd> from step to step, <kbd>Enter</kbd> opens one, <kbd>Alt</kbd> with them
        moves it in this list, <kbd>Ins</kbd> adds one behind it, <kbd>Del</kbd> takes it out.
      </p>
    </>
  );
}

function StepItem(props: {
  readonly desk: RecordDesk;
  readonly kept: KeptWork;
  readonly step: WorkStep;
  readonly method: PlainMethod | undefined;
  readonly faults: readonly string[];
  readonly unit: TimeUnit;
  readonly open: boolean;
  readonly onOpen: () => void;
  readonly onKey: (event: KeyboardEvent) => void;
  readonly onMove: (by: -1 | 1) => void;
  readonly onRemove: () => void;
}) {
  const { kept, step, method, faults, unit, open } = props;
  const source = method?.sources[step.id];
  const several = kept.work.unitsPerCycle > 1 || kept.work.steps.some(({ unit: own }) => own > 1);
  return (
    <li className={faults.length > 0 ? 'wrong' : undefined}>
      <button
        type="button"
        className="step-head"
        data-step={step.id}
        aria-expanded={open}
        onClick={props.onOpen}
        onKeyDown={props.onKey}
      >
        <span className="step-name">{step.name}</span>
        {source === undefined ? null : (
          <span className="number" title={source.motions.map(({ words }) => words).join('; ')}>
            {timeText(micros(Math.round(source.us)), unit)}
          </span>
        )}
      </button>
      {open ? null : <p className="soft">{stepSentence(kept.work, step, several)}</p>}
      {faults.map((fault) => (
        <p key={fault} className="work-fault" role="alert">
          {fault}
        </p>
      ))}
      {open ? <StepFields {...props} source={source} /> : null}
    </li>
  );
}
