import type { LeadList, MethodReading } from '@evenhand/core/examine';
import type { Study } from '@evenhand/core/ground/study';
import { countText, timeText } from '@evenhand/core/ground/units';
import { CommitField } from '../record/commit-field.tsx';
import type { RecordDesk } from '../record/desk.ts';
import { useDocument } from '../record/use-desk.ts';
import { usePreferences } from '../shell/preferences.ts';
import { hoursText, stakeText } from './stake-text.ts';

/** Above the leads: what all are worth together, what is noted of the record, and the volume that hours a year need. */
export function LeadsHead(props: {
  readonly desk: RecordDesk;
  readonly list: LeadList;
  readonly reading: MethodReading;
}) {
  const { desk, list, reading } = props;
  const { unit } = usePreferences();
  const { study } = useDocument(desk);
  const { leads, joint } = list;
  const hours = hoursText(joint.hoursAYear);
  return (
    <header className="joint">
      <p className="sum">
        <strong>{countText(leads.length, 'lead')}</strong>
        {leads.length < 2 ? ': ' : '. All together, which is not their sum: '}
        <strong>{stakeText(joint.atStake, unit)}</strong>
        {hours === undefined ? null : <>, {hours}</>}.
      </p>
      <p className="soft">
        A mean cycle takes {timeText(list.cycle, unit)}
        {reading.method.unitsPerCycle === 1
          ? ''
          : ` and makes ${countText(reading.method.unitsPerCycle, 'unit')}`}
        .
      </p>
      {reading.notes.map((note) => (
        <p key={note.code} className="note">
          {note.message}
        </p>
      ))}
      <div className="volume">
        <CommitField
          label="Units a year"
          value={study.operation.unitsAYear === undefined ? '' : String(study.operation.unitsAYear)}
          placeholder="for hours a year"
          onCommit={(text) => setVolume(desk, text)}
        />
        <details>
          <summary>What “together” means</summary>
          <p>{joint.rule}</p>
        </details>
      </div>
    </header>
  );
}

/** More than a billion a year of anything is a slip of the finger. Ours. */
const mostUnits = 1e9;

function setVolume(desk: RecordDesk, text: string): void {
  const { operation: was } = desk.study;
  const digits = text.replace(/[\s’']/g, '');
  const units = Number(digits);
  if (digits !== '' && !(/^\d+$/.test(digits) && units >= 1 && units <= mostUnits))
    return desk.say(`“${text.trim()}” is no number of units a year. Write a whole number, such as 180000.`);
  const operation = withVolume(was, digits === '' ? undefined : units);
  desk.dispatch({ type: 'study.change', to: { operation }, was: { operation: was } });
}

function withVolume(operation: Study['operation'], units: number | undefined): Study['operation'] {
  const { unitsAYear: _, ...rest } = operation;
  return units === undefined ? rest : { ...rest, unitsAYear: units };
}
