import { emptyTimeStudy, timeStudyFromRecord } from '@evenhand/core/define';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import { type TimeUnit, timeUnitNames, timeUnits } from '@evenhand/core/ground/units';
import { useState } from 'react';
import { Dialog } from '../shell/dialog.tsx';
import { freeName, newElement } from './define-edits.ts';

type Kind = 'record' | 'readings';

/** A new time study: from the marked film of a method, or by readings. */
export function NewStudyDialog(props: {
  readonly study: Study;
  readonly onClose: () => void;
  readonly onMake: (timeStudy: TimeStudy) => void;
}) {
  const { study } = props;
  const recorded = study.methods.filter(({ kind }) => kind === 'recorded');
  const [kind, setKind] = useState<Kind>(recorded.length > 0 ? 'record' : 'readings');
  const [method, setMethod] = useState(recorded[0]?.id ?? '');
  const [name, setName] = useState('');
  const [lines, setLines] = useState('');
  const [unit, setUnit] = useState<TimeUnit>('minutes');
  const [fault, setFault] = useState<string>();
  const taken = (study.timeStudies ?? []).map((each) => each.name);
  const methodName = study.methods.find(({ id }) => id === method)?.name;
  const suggested = freeName(
    kind === 'record' ? `Time study of ${methodName ?? 'the record'}` : 'Time study',
    taken,
  );
  const make = () => {
    const called = name.trim() === '' ? suggested : name.trim();
    const newId = () => crypto.randomUUID();
    if (kind === 'readings') return props.onMake(byReadings({ study, method, unit, lines }, called, newId));
    const made = timeStudyFromRecord(study, method, called, newId);
    if (made.ok) props.onMake({ ...made.value, unit });
    else setFault(made.error.message);
  };
  return (
    <Dialog title="New time study" onClose={props.onClose}>
      <form
        className="new-time-study"
        onSubmit={(event) => {
          event.preventDefault();
          make();
        }}
      >
        <SourceChoice kind={kind} none={recorded.length === 0} onChange={setKind} />
        <label className="stacked">
          <span>{kind === 'record' ? 'Method' : 'Method that is timed'}</span>
          <select value={method} onChange={(event) => setMethod(event.target.value)}>
            {kind === 'readings' ? <option value="">none of this study</option> : null}
            {(kind === 'record' ? recorded : study.methods).map((each) => (
              <option key={each.id} value={each.id}>
                {each.name}
              </option>
            ))}
          </select>
        </label>
        <label className="stacked">
          <span>Name</span>
          <input
            value={name}
            maxLength={200}
            placeholder={suggested}
            onChange={(event) => setName(event.target.value)}
          />
        </label>
        <UnitOfSheet unit={unit} onChange={setUnit} />
        {kind === 'readings' ? (
          <label className="stacked">
            <span>Elements, one a line (more can be added later)</span>
            <textarea rows={6} value={lines} onChange={(event) => setLines(event.target.value)} />
          </label>
        ) : null}
        {fault === undefined ? null : (
          <p className="fault-text" role="alert">
            {fault}
          </p>
        )}
        <div className="actions">
          <button type="submit" className="primary">
            Begin
          </button>
        </div>
      </form>
    </Dialog>
  );
}

function UnitOfSheet(props: { readonly unit: TimeUnit; readonly onChange: (unit: TimeUnit) => void }) {
  return (
    <label className="stacked">
      <span>Unit in which the sheet is written</span>
      <select value={props.unit} onChange={(event) => props.onChange(event.target.value as TimeUnit)}>
        {timeUnitNames.map((each) => (
          <option key={each} value={each}>
            {timeUnits[each].name}
          </option>
        ))}
      </select>
    </label>
  );
}

function SourceChoice(props: {
  readonly kind: Kind;
  readonly none: boolean;
  readonly onChange: (kind: Kind) => void;
}) {
  const { kind, none } = props;
  return (
    <fieldset>
      <legend>Its times come from</legend>
      <label className="check">
        <input
          type="radio"
          name="source"
          checked={kind === 'record'}
          disabled={none}
          onChange={() => props.onChange('record')}
        />
        the marked film of a method{none ? ' (none is marked yet)' : ''}
      </label>
      <label className="check">
        <input
          type="radio"
          name="source"
          checked={kind === 'readings'}
          onChange={() => props.onChange('readings')}
        />
        readings: typed, pasted, or taken with the stopwatch
      </label>
    </fieldset>
  );
}

interface Wanted {
  readonly study: Study;
  readonly method: string;
  readonly unit: TimeUnit;
  /** Names of elements, one a line. */
  readonly lines: string;
}

function byReadings({ study, method, unit, lines }: Wanted, name: string, newId: () => string): TimeStudy {
  const names = lines
    .split('\n')
    .map((line) => line.trim().slice(0, 200))
    .filter((line) => line !== '');
  const chosen = study.methods.find(({ id }) => id === method);
  return {
    ...emptyTimeStudy({
      id: newId(),
      name,
      unit,
      source: { kind: 'readings', timing: 'typed', ...(chosen === undefined ? {} : { method }) },
      piecesPerCycle: chosen?.unitsPerCycle ?? 1,
    }),
    elements: names.map((each) => newElement(each, newId())),
  };
}
