import { conventionWords, standardTime, type TimeStudySheet } from '@evenhand/core/define';
import type { TimeStudy } from '@evenhand/core/ground/study';
import { numberText, percentText } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { inSheet, inSheetNumber } from './sheet-words.ts';
import type { BootstrapState } from './use-sheet.ts';

/** The standard large, with how sure it is and what its figures mean. */
export function StandardBlock(props: {
  readonly sheet: TimeStudySheet;
  readonly stale: boolean;
  readonly bootstrap: BootstrapState;
  readonly faults: number;
}) {
  const { sheet, bootstrap } = props;
  if (sheet.standard === undefined) {
    return (
      <section className="standard-block none" aria-label="The standard">
        <h3>Standard time</h3>
        <p className="big soft">not yet</p>
        <p>
          {props.faults === 0
            ? 'Readings make the standard: write them below.'
            : 'What stands in its way is said below; each line leads to its place.'}
        </p>
      </section>
    );
  }
  const { standard, interval, piecesPerHour } = sheet.standard;
  const { timeStudy, unit } = sheet;
  const pieces = timeStudy.piecesPerCycle;
  const half = interval === undefined ? 0 : (interval.interval.high - interval.interval.low) / 2;
  return (
    <section className="standard-block" aria-label="The standard" aria-busy={props.stale}>
      <h3>Standard time{pieces === 1 ? '' : ' of a cycle'}</h3>
      <p className="big" data-standard={standard.standard}>
        {inSheet(standard.standard, unit)}
      </p>
      {interval === undefined ? (
        <p>No interval: an element with a single reading says nothing about its spread.</p>
      ) : (
        <p className="interval">
          {percentText(interval.interval.confidence, 0)} interval{' '}
          <strong>
            {inSheetNumber(interval.interval.low, unit)} to {inSheet(interval.interval.high, unit)}
          </strong>{' '}
          <span className="soft">(± {percentText(half / standard.standard)})</span>
        </p>
      )}
      <BootstrapLine sheet={sheet} state={bootstrap} />
      <p className="output">
        <strong>{numberText(piecesPerHour.rate, 1)}</strong> pieces an hour{' '}
        <span className="soft">
          ({piecesPerHour.whole} whole ones
          {pieces === 1 ? '' : `, ${pieces} a cycle, ${inSheet(standard.standard / pieces, unit, 1)} a piece`}
          )
        </span>
      </p>
      <OtherConvention sheet={sheet} />
    </section>
  );
}

function BootstrapLine(props: { readonly sheet: TimeStudySheet; readonly state: BootstrapState }) {
  const { sheet, state } = props;
  if (state.kind === 'none') return null;
  return (
    <p className="interval soft" data-bootstrap={state.kind}>
      {state.kind === 'working' ? (
        'Drawing whole cycles anew to check it …'
      ) : state.kind === 'refused' ? (
        `The check by drawing cycles could not be made: ${state.reason}`
      ) : (
        <>
          Checked by drawing cycles: {inSheetNumber(state.bootstrap.interval.low, sheet.unit)} to{' '}
          {inSheet(state.bootstrap.interval.high, sheet.unit)}{' '}
          <span title={state.bootstrap.words}>({state.bootstrap.draws} draws)</span>
        </>
      )}
    </p>
  );
}

/** The allowance in both conventions, and what the same figure would give if it were read the other way. */
function OtherConvention(props: { readonly sheet: TimeStudySheet }) {
  const { sheet } = props;
  const { allowances, standard, unit, timeStudy } = sheet;
  const misread = useMemo(() => misreadStandard(sheet), [sheet]);
  if (allowances === undefined || standard === undefined) return null;
  const { worker, other } = allowances;
  if (worker.share === 0) {
    return (
      <p className="convention">
        No relaxation allowance is given yet. An allowance is {conventionWords[worker.convention]}.
      </p>
    );
  }
  return (
    <p className="convention">
      Allowance {percentText(worker.share)}, {conventionWords[worker.convention]}; that is{' '}
      {percentText(other.share)} {shareNames[other.convention]}.
      {misread === undefined || timeStudy.allowances.relaxation.kind === 'table' ? null : (
        <>
          {' '}
          <span className="soft">
            Read as {shareNames[other.convention]}, the same {percentText(worker.share)} would give{' '}
            {inSheet(misread, unit)}: another standard, so the convention is never left out.
          </span>
        </>
      )}
    </p>
  );
}

const shareNames = {
  'share-of-basic-time': 'of the basic time',
  'share-of-shift': 'of the shift',
} as const;

function misreadStandard({ standard, timeStudy, allowances }: TimeStudySheet): number | undefined {
  if (standard === undefined || allowances === undefined || allowances.worker.share === 0) return undefined;
  const { process, contingency } = timeStudy.allowances as TimeStudy['allowances'];
  const plan = {
    convention: allowances.other.convention,
    worker: allowances.worker.share,
    process,
    contingency,
  };
  const read = standardTime(standard.standard.elements, plan);
  return read.ok ? read.value.standard : undefined;
}
