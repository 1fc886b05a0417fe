import { countText } from '@evenhand/core/ground/units';
import { lineOf } from './grid-model.ts';
import type { Grid } from './grid-state.ts';

/** Cells whose text could not be taken, each leading to its place. */
export function WrongList(props: { readonly grid: Grid; readonly onGo: () => void }) {
  const { grid } = props;
  const { model } = grid;
  const places = wrongPlaces(grid);
  if (places.length === 0) return null;
  return (
    <div className="wrong-cells">
      <span>{countText(places.length, 'cell')} not taken, in no figure until corrected:</span>
      {places.slice(0, 12).map(({ line, column, text }) => (
        <button
          key={`${line} ${column}`}
          type="button"
          className="quiet"
          onClick={() => {
            grid.goTo({ line, column });
            props.onGo();
          }}
        >
          {model.elements[model.lines[line]?.element ?? 0]?.name}, cycle {model.cycles[column]}
          {model.lines[line]?.kind === 'rating' ? ', rating' : ''}: “{text}”
        </button>
      ))}
      {places.length > 12 ? <span>and {places.length - 12} more</span> : null}
    </div>
  );
}

function wrongPlaces({ model, wrong }: Grid) {
  return [...wrong].flatMap(([key, { text }]) => {
    const [kind, cycle, ...rest] = key.split(' ');
    const line = lineOf(model, rest.join(' '), kind === 'rating' ? 'rating' : 'time');
    const column = model.cycles.indexOf(Number(cycle));
    return line < 0 || column < 0 ? [] : [{ line, column, text }];
  });
}
