import type { TimeStudySheet } from '@evenhand/core/define';
import { fail, ok } from '@evenhand/core/ground/base';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import { type RatingScaleId, ratingScales } from '@evenhand/core/ground/tables';
import { type TimeUnit, timeUnitNames, timeUnits } from '@evenhand/core/ground/units';
import type { RecordDesk } from '../record/desk.ts';
import { anyText, CheckedField } from './checked-field.tsx';
import { changeHeading, changeTimeStudy, type HeadingField } from './define-edits.ts';
import { sittingWords, sourceWords } from './sheet-words.ts';

const headings: readonly (readonly [HeadingField, string])[] = [
  ['name', 'Operation'],
  ['number', 'Number'],
  ['part', 'Part'],
  ['department', 'Department'],
  ['analyst', 'Analyst'],
];

/** The heading of the study sheet: what was timed, by whom, when and in which unit. */
export function SheetHead(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly timeStudy: TimeStudy;
  readonly sheet: TimeStudySheet;
  readonly onSittings: () => void;
}) {
  const { desk, study, timeStudy, sheet } = props;
  const last = sheet.cycles.at(-1) ?? 1;
  const sittings = sittingWords(timeStudy.sittings ?? [], last);
  const take = (edit: ReturnType<typeof changeTimeStudy>) => {
    if (edit !== undefined) desk.dispatch(edit);
  };
  return (
    <section className="sheet-head" aria-label="Heading of the sheet">
      <h2>{timeStudy.name}</h2>
      <div className="head-fields">
        {headings.map(([field, label]) => (
          <CheckedField
            key={field}
            label={label}
            field={field}
            value={study.operation[field] ?? ''}
            read={(text) =>
              field === 'name' && text.trim() === '' ? fail('An operation has a name.') : ok(text)
            }
            onCommit={(text) => take(changeHeading(desk.study, field, text))}
          />
        ))}
        <UnitAndScale timeStudy={timeStudy} onTake={take} />
        <MethodField {...props} />
        <CheckedField
          label="Note"
          value={timeStudy.note ?? ''}
          read={anyText}
          onCommit={(note) => take(changeTimeStudy(timeStudy, { note: note === '' ? null : note }))}
        />
      </div>
      <dl className="head-lines">
        <div>
          <dt>Times from</dt>
          <dd>{sourceWords(timeStudy, sheet)}</dd>
        </div>
        <div>
          <dt>Sittings</dt>
          <dd>
            {sittings.length === 0 ? 'none noted' : sittings.slice(0, 4).join('; ')}
            {sittings.length > 4 ? ` and ${sittings.length - 4} more` : ''}{' '}
            <button type="button" className="quiet" onClick={props.onSittings}>
              {sittings.length === 0 ? 'Note date and operator' : 'Change'}
            </button>
          </dd>
        </div>
      </dl>
    </section>
  );
}

function UnitAndScale(props: {
  readonly timeStudy: TimeStudy;
  readonly onTake: (edit: ReturnType<typeof changeTimeStudy>) => void;
}) {
  const { timeStudy, onTake: take } = props;
  return (
    <>
      <label className="checked-field">
        <span className="label">Unit</span>
        <select
          value={timeStudy.unit}
          onChange={(event) => take(changeTimeStudy(timeStudy, { unit: event.target.value as TimeUnit }))}
        >
          {timeUnitNames.map((unit) => (
            <option key={unit} value={unit}>
              {timeUnits[unit].name}
            </option>
          ))}
        </select>
      </label>
      <label className="checked-field">
        <span className="label">Rating scale</span>
        <select
          value={timeStudy.scale}
          data-field="scale"
          onChange={(event) =>
            take(changeTimeStudy(timeStudy, { scale: event.target.value as RatingScaleId }))
          }
        >
          {Object.entries(ratingScales).map(([id, { name }]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}

function MethodField(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly timeStudy: TimeStudy;
}) {
  const { desk, study, timeStudy } = props;
  const { source } = timeStudy;
  const record = source.kind === 'record';
  return (
    <label className="checked-field">
      <span className="label">Method</span>
      <select
        value={source.method ?? ''}
        data-field="source"
        disabled={record}
        title={record ? 'The times come from the record of this method.' : undefined}
        onChange={(event) => {
          if (source.kind !== 'readings') return;
          const { method: _, ...rest } = source;
          const method = event.target.value;
          const edit = changeTimeStudy(timeStudy, { source: method === '' ? rest : { ...rest, method } });
          if (edit !== undefined) desk.dispatch(edit);
        }}
      >
        {record ? null : <option value="">none of this study</option>}
        {study.methods.map((method) => (
          <option key={method.id} value={method.id}>
            {method.name}
          </option>
        ))}
      </select>
    </label>
  );
}
