import { conventionWords, relaxationFrom, type TimeStudySheet } from '@evenhand/core/define';
import type { Edit, TimeStudyFields } from '@evenhand/core/ground/edit';
import { shortNumber } from '@evenhand/core/ground/findings';
import type { TimeStudy, TimeStudyAllowances } from '@evenhand/core/ground/study';
import { contingencyMost, ratingScales, sources } from '@evenhand/core/ground/tables';
import { timeUnits } from '@evenhand/core/ground/units';
import type { RecordDesk } from '../record/desk.ts';
import { CheckedField } from './checked-field.tsx';
import { changeTimeStudy } from './define-edits.ts';
import { firstTable } from './editions.ts';
import { EditionsTable } from './editions-table.tsx';
import { percentNumber, readNumber, readPercent } from './field-numbers.ts';
import { readRating } from './readings/cell-text.ts';

type Convention = TimeStudyAllowances['convention'];
type Relaxation = TimeStudyAllowances['relaxation'];

/** Rating, allowances and what is wished of the study, each a number that a person agreed to. */
export function AllowancesPanel(props: {
  readonly desk: RecordDesk;
  readonly timeStudy: TimeStudy;
  readonly sheet: TimeStudySheet;
}) {
  const { desk, timeStudy, sheet } = props;
  const take = (edit: Edit | undefined) => {
    if (edit !== undefined) desk.dispatch(edit);
  };
  const change = (to: TimeStudyFields) => take(changeTimeStudy(timeStudy, to));
  const { allowances } = timeStudy;
  const allow = (to: Partial<TimeStudyAllowances>) => change({ allowances: { ...allowances, ...to } });
  const { relaxation } = allowances;
  return (
    <section className="allowances-part" aria-label="Rating and allowances">
      <header>
        <h3>Rating and allowances</h3>
      </header>
      <div className="allowance-fields">
        <RatingFields timeStudy={timeStudy} onChange={change} />
        <WishFields timeStudy={timeStudy} onChange={change} />
        <ConventionFields timeStudy={timeStudy} onAllow={allow} />
        <ShareFields timeStudy={timeStudy} sheet={sheet} onAllow={allow} />
      </div>
      <p className="allowance-words">{sheet.words.allowance}</p>
      {relaxation.kind === 'table' ? (
        <EditionsTable relaxation={relaxation} onChange={(to) => allow({ relaxation: to })} />
      ) : null}
    </section>
  );
}

interface Fields {
  readonly timeStudy: TimeStudy;
  readonly onChange: (to: TimeStudyFields) => void;
}

interface AllowFields {
  readonly timeStudy: TimeStudy;
  readonly onAllow: (to: Partial<TimeStudyAllowances>) => void;
}

function RatingFields({ timeStudy, onChange: change }: Fields) {
  const { scale } = timeStudy;
  return (
    <fieldset>
      <legend>Rating</legend>
      <CheckedField
        label="Rating of the study"
        field="rating"
        value={timeStudy.rating === undefined ? '' : shortNumber(timeStudy.rating)}
        read={(text) => readRating(text, 'the time study', scale)}
        onCommit={(rating) => change({ rating })}
      />
      <CheckedField
        label="Error of the rater’s level"
        unit="%"
        value={percentNumber(timeStudy.ratingError)}
        read={readPercent({ least: 0, most: 50 })}
        onCommit={(ratingError) => change({ ratingError })}
      />
      <p className="soft">
        On the {ratingScales[scale].name} standard is {ratingScales[scale].standard}. The error is one
        standard deviation; more readings do not make it smaller.
      </p>
    </fieldset>
  );
}

function WishFields({ timeStudy, onChange: change }: Fields) {
  return (
    <fieldset>
      <legend>Wish</legend>
      <CheckedField
        label="Confidence"
        unit="%"
        value={percentNumber(timeStudy.confidence)}
        read={readPercent({ above: 50, most: 99.9999 })}
        onCommit={(confidence) => change({ confidence })}
      />
      <PrecisionField timeStudy={timeStudy} onChange={change} />
      <CheckedField
        label="Pieces a cycle"
        field="piecesPerCycle"
        value={shortNumber(timeStudy.piecesPerCycle)}
        read={readNumber({ above: 0, most: 1_000_000 })}
        onCommit={(piecesPerCycle) => change({ piecesPerCycle })}
      />
    </fieldset>
  );
}

function ConventionFields({ timeStudy, onAllow: allow }: AllowFields) {
  const { convention } = timeStudy.allowances;
  return (
    <fieldset>
      <legend>An allowance is a share of</legend>
      {(['share-of-basic-time', 'share-of-shift'] as const satisfies readonly Convention[]).map((each) => (
        <label key={each} className="check">
          <input
            type="radio"
            name={`convention-${timeStudy.id}`}
            checked={convention === each}
            onChange={() => allow({ convention: each })}
          />
          <span>
            {each === 'share-of-basic-time' ? 'the basic time' : 'the shift'}{' '}
            <span className="soft">{conventionWords[each].replace(/^[^:]*: /, '')}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}

function ShareFields({ timeStudy, onAllow: allow, sheet }: AllowFields & { readonly sheet: TimeStudySheet }) {
  const { allowances } = timeStudy;
  const { relaxation, convention } = allowances;
  const most = convention === 'share-of-shift' ? 100 : 1000;
  return (
    <fieldset>
      <legend>Allowances</legend>
      <RelaxationChoice relaxation={relaxation} onChange={(to) => allow({ relaxation: to })} sheet={sheet} />
      {relaxation.kind === 'share' ? (
        <CheckedField
          label="Relaxation, as agreed"
          field="allowances"
          unit="%"
          value={percentNumber(relaxation.share)}
          read={readPercent({ least: 0, below: most })}
          onCommit={(share) => allow({ relaxation: { kind: 'share', share } })}
        />
      ) : null}
      <CheckedField
        label="On machine time"
        unit="%"
        value={percentNumber(allowances.process)}
        read={readPercent({ least: 0, below: most })}
        onCommit={(process) => allow({ process })}
      />
      <CheckedField
        label="Contingency"
        unit="%"
        value={percentNumber(allowances.contingency)}
        read={readPercent({ least: 0, below: 100 })}
        onCommit={(contingency) => allow({ contingency })}
      />
      {allowances.contingency * 100 > contingencyMost.percent ? (
        <p className="caution">
          The published sheet prints a contingency of {contingencyMost.percent} % at most (
          {sources[contingencyMost.source].reference}).
        </p>
      ) : null}
    </fieldset>
  );
}

function RelaxationChoice(props: {
  readonly relaxation: Relaxation;
  readonly sheet: TimeStudySheet;
  readonly onChange: (to: Relaxation) => void;
}) {
  const { relaxation, sheet } = props;
  const toShare = (): Relaxation => {
    const sum =
      relaxation.kind === 'table'
        ? relaxationFrom(relaxation.edition, relaxation.column, relaxation.choices)
        : undefined;
    return {
      kind: 'share',
      share: sheet.allowances?.worker.share ?? (sum?.ok === true ? sum.value.share : 0),
    };
  };
  return (
    <label className="checked-field">
      <span className="label">Relaxation</span>
      <select
        value={relaxation.kind}
        onChange={(event) =>
          props.onChange(event.target.value === 'share' ? toShare() : firstTable('kilograms'))
        }
      >
        <option value="share">one agreed figure</option>
        <option value="table">from a published table</option>
      </select>
    </label>
  );
}

function PrecisionField(props: {
  readonly timeStudy: TimeStudy;
  readonly onChange: (to: TimeStudyFields) => void;
}) {
  const { precision, unit } = props.timeStudy;
  const { microseconds, symbol } = timeUnits[unit];
  const relative = precision.kind === 'relative';
  return (
    <div className="precision">
      <CheckedField
        label="Precision of each mean, ±"
        unit={relative ? '%' : symbol}
        value={relative ? percentNumber(precision.share) : shortNumber(precision.us / microseconds)}
        read={
          relative
            ? readPercent({ above: 0, below: 100 })
            : readNumber({ above: 0, most: 1e12 / microseconds })
        }
        onCommit={(value) =>
          props.onChange({
            precision: relative
              ? { kind: 'relative', share: value }
              : { kind: 'absolute', us: Math.max(1, Math.round(value * microseconds)) },
          })
        }
      />
      <button
        type="button"
        className="quiet"
        onClick={() =>
          props.onChange({
            precision: relative
              ? { kind: 'absolute', us: Math.max(1, Math.round(0.01 * microseconds)) }
              : { kind: 'relative', share: 0.05 },
          })
        }
      >
        {relative ? `in ${symbol} instead` : 'in % instead'}
      </button>
    </div>
  );
}
