import { ok } from '@evenhand/core/ground/base';
import type { Edit } from '@evenhand/core/ground/edit';
import type { KeptWork, WorkPlace } from '@evenhand/core/ground/study';
import { numberText } from '@evenhand/core/ground/units';
import { CheckedField } from '../../define/checked-field.tsx';
import { orNone, readNumber } from '../../define/field-numbers.ts';
import { setPlace, turned } from './bench-of.ts';

type Take = (edit: Edit | undefined) => void;
const kinds: Readonly<Record<WorkPlace['kind'], string>> = {
  bin: 'bin',
  fixture: 'fixture',
  tool: 'tool',
  exit: 'exit',
  machine: 'machine',
  bench: 'bare bench',
};
const position = orNone(readNumber({ least: -5000, most: 5000 }));
const length = orNone(readNumber({ least: 1, most: 5000 }));
const degrees = orNone(readNumber({ least: -360, most: 360 }));

/** The places in figures, for whoever knows them or has no pointer. */
export function PlacesTable(props: {
  readonly kept: KeptWork;
  readonly take: Take;
  readonly trips: ReadonlyMap<string, { readonly left: number; readonly right: number }>;
  readonly onAdd: () => void;
  readonly onRemove: (place: WorkPlace) => void;
}) {
  const { kept, take, trips, onAdd, onRemove } = props;
  return (
    <div className="plan-places">
      <table>
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col">What</th>
            <th scope="col" title="From the middle to the right, millimetres">
              Across
            </th>
            <th scope="col" title="From the near edge, millimetres">
              Deep
            </th>
            <th scope="col" title="Room it takes, millimetres">
              Wide
            </th>
            <th scope="col">Long</th>
            <th scope="col" title="Degrees against the clock">
              Turned
            </th>
            <th scope="col">Stays</th>
            <th scope="col" title="How often each hand comes there in a cycle">
              Trips left, right
            </th>
            <th scope="col">
              <span className="hidden">Take away</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {kept.work.places.map((place) => (
            <PlaceRow
              key={place.id}
              kept={kept}
              place={place}
              take={take}
              trips={trips.get(place.id)}
              onRemove={() => onRemove(place)}
            />
          ))}
        </tbody>
      </table>
      <div className="actions">
        <button type="button" onClick={onAdd}>
          Add a place
        </button>
      </div>
    </div>
  );
}

function PlaceRow(props: {
  readonly kept: KeptWork;
  readonly place: WorkPlace;
  readonly take: Take;
  readonly trips: { readonly left: number; readonly right: number } | undefined;
  readonly onRemove: () => void;
}) {
  const { kept, place, take, trips, onRemove } = props;
  const { name, kind, at, size, angle, stays } = place;
  const set = (to: Parameters<typeof setPlace>[2]) => take(setPlace(kept, place, to));
  const setAt = (axis: 'x' | 'y', value: number | null) =>
    set({ at: value === null ? null : { x: at?.x ?? 0, y: at?.y ?? 0, [axis]: value } });
  const setSize = (axis: 'x' | 'y', value: number | null) => {
    const other = axis === 'x' ? size?.y : size?.x;
    set({ size: value === null ? null : { x: other ?? value, y: other ?? value, [axis]: value } });
  };
  const cell = (
    label: string,
    value: number | undefined,
    read: typeof length,
    onCommit: (value: number | null) => void,
  ) => (
    <td className="number">
      <CheckedField
        label={`${label} of ${name}`}
        bare
        value={value === undefined ? '' : String(value)}
        read={read}
        onCommit={onCommit}
      />
    </td>
  );
  return (
    <tr data-place={place.id}>
      <td className="name">
        <CheckedField
          label={`Name of ${name}`}
          bare
          value={name}
          read={(text) => ok(text.trim())}
          onCommit={(text) => text !== '' && set({ name: text })}
        />
      </td>
      <td>
        <select
          aria-label={`What ${name} is`}
          value={kind}
          onChange={(event) => set({ kind: event.target.value as WorkPlace['kind'] })}
        >
          {Object.entries(kinds).map(([id, text]) => (
            <option key={id} value={id}>
              {text}
            </option>
          ))}
        </select>
      </td>
      {cell('Across', at?.x, position, (value) => setAt('x', value))}
      {cell('Deep', at?.y, position, (value) => setAt('y', value))}
      {cell('Width', size?.x, length, (value) => setSize('x', value))}
      {cell('Length', size?.y, length, (value) => setSize('y', value))}
      {cell('Angle', angle, degrees, (value) =>
        set({ angle: value === null || turned(value) === 0 ? null : turned(value) }),
      )}
      <td>
        <input
          type="checkbox"
          aria-label={`${name} stays where it is`}
          checked={stays === true}
          onChange={(event) => set({ stays: event.target.checked ? true : null })}
        />
      </td>
      <td className="number">
        {trips === undefined ? '–' : `${numberText(trips.left, 0)}, ${numberText(trips.right, 0)}`}
      </td>
      <td>
        <button type="button" className="quiet" aria-label={`Take ${name} away`} onClick={onRemove}>
          Take away
        </button>
      </td>
    </tr>
  );
}
