import { type GroupingId, groupings, motionFactsOf, sources } from '@evenhand/core/ground/tables';
import { percentText } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { preferences } from '../../shell/preferences.ts';
import { FigureBlock } from './figure-block.tsx';
import type { SectionProps } from './section.ts';
import { mostBars, type NamedRow, paceTable, timePlot, timeTable } from './time-tables.ts';

/** Where the time of each hand goes: by motion, by object, by place, effective and ineffective. */
export function TimeSection(props: SectionProps) {
  const { figures, unit, onTrace, open, reading } = props;
  const look = { unit, cycles: reading.cycles.length };
  const { times } = figures;
  const motions = useMemo(
    () =>
      times.motions.map((row): NamedRow => {
        const { code, name, colour } = motionFactsOf(row.kind);
        return { ...row, name: `${name} (${code})`, colour, kind: row.kind };
      }),
    [times],
  );
  const objects = useMemo(
    () => times.objects.map((row): NamedRow => ({ ...row, name: row.object ?? 'no object said' })),
    [times],
  );
  const places = useMemo(
    () => times.places.map((row): NamedRow => ({ ...row, name: row.name ?? 'no place said' })),
    [times],
  );
  return (
    <>
      <Bars title="Time by motion" what="Motion" rows={motions} {...props} />
      <Effective {...props} />
      <Bars title="Time by object" what="Object" rows={objects} {...props} />
      <Bars title="Time by place" what="Place" rows={places} {...props} />
      <FigureBlock
        title="Number of motions"
        tables={[paceTable(figures, look)]}
        onTrace={onTrace}
        open={open}
      />
    </>
  );
}

function Bars(
  props: SectionProps & {
    readonly title: string;
    readonly what: string;
    readonly rows: readonly NamedRow[];
  },
) {
  const { rows, unit, title, what, reading, onTrace, open } = props;
  const plot = useMemo(() => timePlot(rows, unit), [rows, unit]);
  const names = useMemo(() => new Set(rows.map(({ name }) => name)).size, [rows]);
  const table = useMemo(
    () => timeTable(title, what, rows, { unit, cycles: reading.cycles.length }),
    [title, what, rows, unit, reading],
  );
  return (
    <FigureBlock title={title} plot={plot} tables={[table]} onTrace={onTrace} open={open}>
      {names > mostBars ? (
        <p className="soft">
          The plot shows the {mostBars} longest of {names}; the table has all.
        </p>
      ) : null}
    </FigureBlock>
  );
}

function Effective(props: SectionProps) {
  const { figures, unit, onTrace, open, reading } = props;
  const { grouping, rows } = figures.groups;
  const named = useMemo(() => rows.map((row): NamedRow => ({ ...row, name: groupWords[row.group] })), [rows]);
  const plot = useMemo(() => timePlot(named, unit), [named, unit]);
  const title = `Effective and ineffective after ${grouping.name}`;
  const table = timeTable(title, 'Group', named, { unit, cycles: reading.cycles.length });
  return (
    <FigureBlock title={title} plot={plot} tables={[table]} onTrace={onTrace} open={open}>
      <div className="figure-choices">
        <label className="inline-choice">
          <span>Grouped after</span>
          <select
            value={grouping.id}
            onChange={(event) => preferences.change({ grouping: event.target.value as GroupingId })}
          >
            {Object.values(groupings).map((item) => (
              <option key={item.id} value={item.id}>
                {item.name}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p>{groupShares(figures.groups)}</p>
      <p className="soft">
        Authors differ. {grouping.note} Source: {sources[grouping.source].reference}.
      </p>
    </FigureBlock>
  );
}

/** "Left hand 29.0 % effective, 71.0 % ineffective; …": the author stands beside the shares. */
function groupShares({ rows, grouping }: SectionProps['figures']['groups']): string {
  const of = (hand: 'left' | 'right') =>
    rows
      .filter((row) => row.hand === hand && (row.share.value ?? 0) > 0)
      .map((row) => `${percentText(row.share.value ?? 0)} ${groupWords[row.group]}`)
      .join(', ') || 'nothing marked';
  return `After ${grouping.name}, of the marked time: left hand ${of('left')}; right hand ${of('right')}.`;
}

const groupWords = {
  effective: 'effective',
  ineffective: 'ineffective',
  unlisted: 'in neither list',
} as const;
