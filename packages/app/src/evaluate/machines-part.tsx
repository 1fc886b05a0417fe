import { bestAssignment, idealMachines, machinesCalling, serviceLoss } from '@evenhand/core/evaluate';
import { numberText, percentText } from '@evenhand/core/ground/units';
import { useState } from 'react';
import { CheckedField } from '../define/checked-field.tsx';
import { percentNumber, readNumber, readPercent } from '../define/field-numbers.ts';

/** How many machines one worker serves: in a fixed round, or as they call at random. Nothing of it is kept. */
export function MachinesPart() {
  const [how, setHow] = useState<'round' | 'random'>('round');
  return (
    <details className="machines">
      <summary>Machines for one worker</summary>
      <div className="tabs" role="group" aria-label="Kind of servicing">
        <button type="button" aria-pressed={how === 'round'} onClick={() => setHow('round')}>
          In a fixed round
        </button>
        <button type="button" aria-pressed={how === 'random'} onClick={() => setHow('random')}>
          As they call
        </button>
      </div>
      <p className="soft">The figures are an example; write your own. Nothing of it is kept.</p>
      {how === 'round' ? <Round /> : <Calling />}
    </details>
  );
}

function Round() {
  const [given, setGiven] = useState({
    together: 1,
    workerAlone: 0.5,
    machineAlone: 6,
    workerCost: 30,
    machineCost: 20,
  });
  const field = (label: string, key: keyof typeof given, unit?: string) => (
    <CheckedField
      label={label}
      value={String(given[key])}
      unit={unit}
      read={readNumber({ least: 0, most: 1e6 })}
      onCommit={(value) => setGiven({ ...given, [key]: value })}
    />
  );
  const ideal = idealMachines(given);
  const best = bestAssignment(given);
  return (
    <>
      <div className="machine-fields">
        {field('Worker and machine together', 'together', 'min')}
        {field('Worker alone', 'workerAlone', 'min')}
        {field('Machine alone', 'machineAlone', 'min')}
        {field('Cost of an hour, worker', 'workerCost')}
        {field('Cost of an hour, one machine', 'machineCost')}
      </div>
      {!ideal.ok ? (
        <p role="alert">{ideal.error.message}</p>
      ) : !best.ok ? (
        <p role="alert">{best.error.message}</p>
      ) : (
        <p>
          Both would be busy all the time with {numberText(ideal.value, 2)} machines. Cheapest a piece are{' '}
          <strong>{best.value.best.machines}</strong>: a round of {numberText(best.value.best.cycle, 2)} min,{' '}
          {numberText(best.value.best.piecesAnHour, 1)} pieces an hour at{' '}
          {numberText(best.value.best.costAPiece, 3)} a piece; the worker waits{' '}
          {numberText(best.value.best.workerIdleAnHour, 1)} min an hour and each machine{' '}
          {numberText(best.value.best.machineIdleAnHour, 1)} min.
        </p>
      )}
    </>
  );
}

function Calling() {
  const [given, setGiven] = useState({ machines: 4, stopped: 0.15, hours: 8 });
  const loss = serviceLoss(given);
  const exact = machinesCalling({ machines: given.machines, workers: 1, serviceFactor: given.stopped });
  return (
    <>
      <div className="machine-fields">
        <CheckedField
          label="Machines"
          value={String(given.machines)}
          read={readNumber({ least: 1, most: 200, whole: true })}
          onCommit={(machines) => setGiven({ ...given, machines })}
        />
        <CheckedField
          label="Each stands without waiting"
          value={percentNumber(given.stopped)}
          unit="%"
          read={readPercent({ above: 0, below: 100 })}
          onCommit={(stopped) => setGiven({ ...given, stopped })}
        />
        <CheckedField
          label="Hours of the shift"
          value={String(given.hours)}
          read={readNumber({ above: 0, most: 1000 })}
          onCommit={(hours) => setGiven({ ...given, hours })}
        />
      </div>
      {!loss.ok ? (
        <p role="alert">{loss.error.message}</p>
      ) : (
        <p>
          By the binomial rule {numberText(loss.value.lost, 2)} machine-hours of the shift are lost to waiting
          ({percentText(loss.value.lostShare)}).
          {exact.ok
            ? ` With waiting counted in (exponential times, solved exactly), ${percentText(exact.value.efficiency)} of the output is left that there would be without waiting, and a machine that calls finds the worker busy in ${percentText(exact.value.mustWait)} of the cases.`
            : ` ${exact.error.message}`}
        </p>
      )}
    </>
  );
}
