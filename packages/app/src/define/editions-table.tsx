import { relaxationFrom } from '@evenhand/core/define';
import { shortNumber } from '@evenhand/core/ground/findings';
import {
  type AllowanceColumn,
  type AllowanceEditionId,
  type AllowanceRowId,
  allowanceEditions,
  type Source,
  sources,
} from '@evenhand/core/ground/tables';
import { inEdition, rowIn, type TableRelaxation } from './editions.ts';

const editionIds = Object.keys(allowanceEditions) as AllowanceEditionId[];
const columnWords: Readonly<Record<AllowanceColumn, string>> = {
  one: 'one column',
  men: 'men',
  women: 'women',
};
const seenWords: Readonly<Record<Source['seen'], string>> = {
  read: 'read',
  secondary: 'read in another’s words',
  memory: 'from memory',
};

/** The printed forms of the relaxation table side by side: rows and levels are chosen in one of them. */
export function EditionsTable(props: {
  readonly relaxation: TableRelaxation;
  readonly onChange: (to: TableRelaxation) => void;
}) {
  const { relaxation, onChange } = props;
  const rows = [
    ...new Map(
      editionIds.flatMap((id) => allowanceEditions[id].rows.map((row) => [row.id, row.words] as const)),
    ),
  ];
  const choose = (row: AllowanceRowId, level: number | undefined) => {
    const others = relaxation.choices.filter((choice) => choice.row !== row);
    onChange({ ...relaxation, choices: level === undefined ? others : [...others, { row, level }] });
  };
  return (
    <div className="editions">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <div className="scroll-x" tabIndex={0} role="group" aria-label="Editions of the published table">
        <table className="plain editions-table">
          <thead>
            <tr>
              <th scope="col">Percent of basic time</th>
              {editionIds.map((id) => (
                <EditionHead key={id} edition={id} relaxation={relaxation} onChange={onChange} />
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([row, words]) => (
              <tr key={row}>
                <th scope="row">{words}</th>
                {editionIds.map((id) => (
                  <td key={id} className={id === relaxation.edition ? 'chosen' : ''}>
                    <EditionCell
                      edition={id}
                      row={row}
                      relaxation={relaxation}
                      onChoose={(level) => choose(row, level)}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
          <EditionsFoot relaxation={relaxation} />
        </table>
      </div>
      <p className="caution">{allowanceEditions[relaxation.edition].caution}</p>
    </div>
  );
}

function EditionHead(props: {
  readonly edition: AllowanceEditionId;
  readonly relaxation: TableRelaxation;
  readonly onChange: (to: TableRelaxation) => void;
}) {
  const { edition, relaxation, onChange } = props;
  const chosen = edition === relaxation.edition;
  return (
    <th scope="col" className={chosen ? 'chosen' : ''}>
      <label className="check">
        <input
          type="radio"
          name="edition"
          checked={chosen}
          onChange={() => onChange(inEdition(relaxation, edition))}
        />
        {allowanceEditions[edition].name}
      </label>
      {chosen && allowanceEditions[edition].columns.length > 1 ? (
        <select
          aria-label="Column of the table"
          value={relaxation.column}
          onChange={(event) => onChange({ ...relaxation, column: event.target.value as AllowanceColumn })}
        >
          {allowanceEditions[edition].columns.map((column) => (
            <option key={column} value={column}>
              column for {columnWords[column]}
            </option>
          ))}
        </select>
      ) : null}
    </th>
  );
}

function EditionsFoot({ relaxation }: { readonly relaxation: TableRelaxation }) {
  const sum = relaxationFrom(relaxation.edition, relaxation.column, relaxation.choices);
  return (
    <tfoot>
      <tr>
        <th scope="row">Sum</th>
        {editionIds.map((id) => (
          <td key={id} className={id === relaxation.edition ? 'chosen' : ''}>
            {id === relaxation.edition ? (
              sum.ok ? (
                <strong>{shortNumber(sum.value.percent)} % of basic time</strong>
              ) : (
                <span className="fault-text">{sum.error.message}</span>
              )
            ) : (
              <OtherSum relaxation={relaxation} edition={id} />
            )}
          </td>
        ))}
      </tr>
      <tr className="soft">
        <th scope="row">Source</th>
        {editionIds.map((id) => {
          const source: Source = sources[allowanceEditions[id].source];
          return (
            <td key={id}>
              {allowanceEditions[id].differs} {source.reference} ({seenWords[source.seen]}).
            </td>
          );
        })}
      </tr>
    </tfoot>
  );
}

function EditionCell(props: {
  readonly edition: AllowanceEditionId;
  readonly row: AllowanceRowId;
  readonly relaxation: TableRelaxation;
  readonly onChoose: (level: number | undefined) => void;
}) {
  const { edition, relaxation } = props;
  const facts = rowIn(edition, props.row);
  if (facts === undefined) return <span className="soft">not printed</span>;
  const chosen = relaxation.choices.find(({ row }) => row === props.row);
  const { columns } = allowanceEditions[edition];
  if (edition !== relaxation.edition) {
    const all = facts.levels.map(({ percents }) => percents.map((each) => each ?? '–').join(' / '));
    return <span className="soft">{spread(all)}</span>;
  }
  const at = (columns as readonly AllowanceColumn[]).indexOf(relaxation.column);
  return (
    <select
      aria-label={facts.words}
      value={chosen?.level ?? ''}
      onChange={(event) => props.onChoose(event.target.value === '' ? undefined : Number(event.target.value))}
    >
      <option value="">does not apply</option>
      {facts.levels.map(({ words, percents }, level) => {
        const percent = percents[at];
        return (
          <option key={words} value={level} disabled={percent === null || percent === undefined}>
            {words}: {percent === null || percent === undefined ? 'not printed' : `${percent} %`}
          </option>
        );
      })}
    </select>
  );
}

function spread(all: readonly string[]): string {
  const shown = all.length <= 4 ? all : [...all.slice(0, 2), '…', all.at(-1) as string];
  return shown.join(', ');
}

/** What the same rows and levels come to in another edition, where it prints them. */
function OtherSum(props: { readonly relaxation: TableRelaxation; readonly edition: AllowanceEditionId }) {
  const other = inEdition(props.relaxation, props.edition);
  const sum = relaxationFrom(other.edition, other.column, other.choices);
  const lost = props.relaxation.choices.length - other.choices.length;
  if (!sum.ok) return null;
  return (
    <span className="soft">
      {shortNumber(sum.value.percent)} %{lost === 0 ? ' with the same rows' : `, without ${lost} of the rows`}
    </span>
  );
}
