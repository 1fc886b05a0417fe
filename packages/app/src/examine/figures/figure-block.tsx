import type { Trace } from '@evenhand/core/examine';
import { type ReactNode, useState } from 'react';
import { FigureTable } from './figure-table.tsx';
import { type PlotMaker, PlotView } from './plot-view.tsx';
import { type TableData, tabbedText } from './table-text.ts';

/** A figure: what it says in a sentence, its plot, and the same as tables that can be copied. */
export function FigureBlock(props: {
  readonly title: string;
  readonly plot?: PlotMaker | undefined;
  readonly tables: readonly TableData[];
  /** What a copy holds; left out: the tables. */
  readonly copied?: readonly TableData[] | undefined;
  readonly onTrace: (traces: readonly Trace[]) => void;
  /** The tables are the figure itself, or are wanted beside the plots. */
  readonly open?: boolean | undefined;
  readonly className?: string | undefined;
  readonly children?: ReactNode;
}) {
  const { title, plot, tables, onTrace } = props;
  const copied = props.copied ?? tables;
  const shown = tables.map((table) => <FigureTable key={table.caption} table={table} onTrace={onTrace} />);
  return (
    <section className={`figure-block ${props.className ?? ''}`.trim()} aria-label={title}>
      <header>
        <h3>{title}</h3>
        {copied.length === 0 ? null : <CopyButton title={title} tables={copied} />}
      </header>
      {props.children}
      {plot === undefined ? null : (
        <PlotView make={plot} label={`${title}. The table below holds the same figures.`} onTrace={onTrace} />
      )}
      {plot === undefined || props.open === true ? (
        shown
      ) : (
        <details>
          <summary>
            As a table<span className="hidden">: {title}</span>
          </summary>
          {shown}
        </details>
      )}
    </section>
  );
}

function CopyButton(props: { readonly title: string; readonly tables: readonly TableData[] }) {
  const [said, setSaid] = useState<string>();
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(tabbedText(props.tables));
      setSaid('Copied');
    } catch {
      setSaid('The browser did not allow it');
    }
    setTimeout(() => setSaid(undefined), 2500);
  };
  return (
    <span className="copy">
      <span role="status" className="soft">
        {said}
      </span>
      <button type="button" className="quiet" onClick={() => void copy()}>
        Copy table<span className="hidden">: {props.title}</span>
      </button>
    </span>
  );
}
