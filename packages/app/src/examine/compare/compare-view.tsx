import {
  type ComparedCycle,
  type Comparison,
  type CycleChoice,
  compareCycles,
  comparisonRows,
  comparisonScene,
  comparisonWords,
  cycleOptions,
  cycleOptionWords,
  cycleSteps,
  defaultComparison,
} from '@evenhand/core/examine';
import { roundMicros } from '@evenhand/core/ground/base';
import type { Study } from '@evenhand/core/ground/study';
import { type TimeUnit, timeNumber, timeUnits } from '@evenhand/core/ground/units';
import { sceneToSvg } from '@evenhand/draw';
import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import { download } from '../../chart/download.ts';
import { svgFonts } from '../../chart/svg-fonts.ts';
import { useLook, usePreferences } from '../../shell/preferences.ts';
import { FigureBlock } from '../figures/figure-block.tsx';
import { FigureTable } from '../figures/figure-table.tsx';
import '../figures/figures.css';
import type { TableData } from '../figures/table-text.ts';
import { SceneView } from './scene-view.tsx';

/** Two cycles one under the other on one time scale: of two methods, or of the same one. */
export function CompareView(props: { readonly study: Study }) {
  const { study } = props;
  const { unit } = usePreferences();
  const first = useMemo(() => defaultComparison(study), [study]);
  const [chosen, setChosen] = useState<{ readonly upper?: CycleChoice; readonly lower?: CycleChoice }>({});
  if (first === undefined) return <p className="compare-view">No method of this study can be read yet.</p>;
  const known = (choice: CycleChoice | undefined) =>
    study.methods.some((method) => method.id === choice?.method) ? choice : undefined;
  const upper = known(chosen.upper) ?? first.upper;
  const lower = known(chosen.lower) ?? first.lower;
  const compared = compareCycles(study, upper, lower);
  return (
    <div className="compare-view">
      <div className="compare-choices">
        <SideChoice
          label="Above"
          study={study}
          choice={upper}
          unit={unit}
          onChange={(next) => setChosen({ ...chosen, upper: next })}
        />
        <SideChoice
          label="Below"
          study={study}
          choice={lower}
          unit={unit}
          onChange={(next) => setChosen({ ...chosen, lower: next })}
        />
        <button type="button" onClick={() => setChosen({ upper: lower, lower: upper })}>
          Exchange
        </button>
      </div>
      {compared.ok ? (
        <Compared comparison={compared.value} unit={unit} name={study.title} />
      ) : (
        <p role="alert">{compared.error.message}</p>
      )}
    </div>
  );
}

function SideChoice(props: {
  readonly label: string;
  readonly study: Study;
  readonly choice: CycleChoice;
  readonly unit: TimeUnit;
  readonly onChange: (choice: CycleChoice) => void;
}) {
  const { label, study, choice, unit } = props;
  const options = cycleOptions(study, choice.method);
  const cycle =
    choice.cycle ?? options.find((option) => option.marks.includes('middle'))?.number ?? options[0]?.number;
  return (
    <fieldset>
      <legend>{label}</legend>
      <label className="inline-choice">
        <span>Method</span>
        <select value={choice.method} onChange={(event) => props.onChange({ method: event.target.value })}>
          {study.methods.map((method) => (
            <option key={method.id} value={method.id}>
              {method.name}
            </option>
          ))}
        </select>
      </label>
      <label className="inline-choice">
        <span>Cycle</span>
        <select
          value={cycle}
          onChange={(event) => props.onChange({ method: choice.method, cycle: Number(event.target.value) })}
        >
          {options.map((option) => (
            <option key={option.number} value={option.number}>
              {cycleOptionWords(option, unit)}
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  );
}

function Compared(props: {
  readonly comparison: Comparison;
  readonly unit: TimeUnit;
  readonly name: string;
}) {
  const { comparison, unit } = props;
  const look = useLook();
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(1000);
  useLayoutEffect(() => {
    const element = host.current;
    if (element === null) return;
    const measure = () => setWidth(Math.max(600, Math.floor(element.clientWidth)));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const scene = useMemo(() => comparisonScene(comparison, { width, unit }), [comparison, width, unit]);
  const words = comparisonWords(comparison, unit);
  const save = async () => {
    const text = sceneToSvg(scene, { fonts: await svgFonts() });
    download(`${props.name} - before and after.svg`, new Blob([text], { type: 'image/svg+xml' }));
  };
  return (
    <>
      <div className="compare-words">
        <p className="difference">{words.difference}</p>
        <p className="soft">{words.caution}</p>
      </div>
      <div className="compare-scene" ref={host}>
        <SceneView scene={scene} look={look} id="compare" />
      </div>
      <p>
        <button type="button" onClick={() => void save()}>
          Save as SVG
        </button>
      </p>
      <ChangeTable comparison={comparison} unit={unit} />
    </>
  );
}

function ChangeTable(props: { readonly comparison: Comparison; readonly unit: TimeUnit }) {
  const { comparison, unit } = props;
  const change = useMemo(() => changeTable(comparison, unit), [comparison, unit]);
  const steps = useMemo(
    () => [stepsTable(comparison.upper, unit), stepsTable(comparison.lower, unit)],
    [comparison, unit],
  );
  return (
    <>
      <FigureBlock title="What changes for one unit" tables={[change]} onTrace={nowhere} />
      <FigureBlock title="Both cycles in words" tables={[]} copied={steps} onTrace={nowhere}>
        <details>
          <summary>Show what both hands do, stretch by stretch</summary>
          {steps.map((table) => (
            <FigureTable key={table.caption} table={table} onTrace={nowhere} />
          ))}
        </details>
      </FigureBlock>
    </>
  );
}

/** There is no film beside the comparison. */
const nowhere = () => undefined;

function changeTable(comparison: Comparison, unit: TimeUnit): TableData {
  const { upper, lower } = comparison;
  const text = (time: number) => timeNumber(roundMicros(time), unit);
  const number = (head: string) => ({ head, number: true });
  const { symbol } = timeUnits[unit];
  return {
    caption: `Time for one unit, motion by motion, largest change first, ${symbol}`,
    columns: [
      { head: 'Motion' },
      { head: 'Hand' },
      number(`${upper.name} (above)`),
      number(`${lower.name} (below)`),
      number('change'),
    ],
    rows: comparisonRows(comparison).map((row) => ({
      key: `${row.hand} ${row.kind}`,
      cells: [
        row.name,
        row.hand,
        text(row.upper),
        text(row.lower),
        `${row.change > 0 ? '+' : ''}${text(row.change)}`,
      ],
      kinds: [row.kind],
    })),
  };
}

function stepsTable(compared: ComparedCycle, unit: TimeUnit): TableData {
  const { symbol } = timeUnits[unit];
  return {
    caption: `${compared.name}, stretch by stretch`,
    columns: [
      { head: `from, ${symbol}` },
      { head: `lasts, ${symbol}`, number: true },
      { head: 'Left hand' },
      { head: 'Right hand' },
    ],
    rows: cycleSteps(compared).map((step) => ({
      key: `${step.start}`,
      cells: [timeNumber(step.start, unit), timeNumber(step.duration, unit), step.left, step.right],
    })),
  };
}
