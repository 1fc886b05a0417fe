import type { MethodReading } from '@evenhand/core/examine';
import { timeText } from '@evenhand/core/ground/units';
import { usePreferences } from '../shell/preferences.ts';
import type { Side } from './film-pair.ts';

/** Which cycle of a method the film and the chart show. */
export function CycleChoice(props: {
  readonly side: Side;
  readonly reading: MethodReading;
  readonly number: number;
  readonly onChange: (number: number) => void;
}) {
  const { side, reading, number } = props;
  const { unit } = usePreferences();
  return (
    <label className="inline-choice">
      <span className="hidden">Shown {side}</span>
      <select value={number} onChange={(event) => props.onChange(Number(event.target.value))}>
        {reading.cycles.map((cycle) => (
          <option key={cycle.number} value={cycle.number}>
            {cycle.number === 0 ? 'the whole record' : `cycle ${cycle.number}`},{' '}
            {timeText(cycle.duration, unit)}
          </option>
        ))}
      </select>
    </label>
  );
}
