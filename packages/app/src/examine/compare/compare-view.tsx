import {
  type Comparison,
  type CycleChoice,
  compareCycles,
  comparisonRows,
  comparisonScene,
  comparisonWords,
  cycleOptions,
  cycleOptionWords,
  defaultComparison,
} from '@evenhand/core/examine';
import { roundMicros } from '@evenhand/core/ground/base';
import type { Study } from '@evenhand/core/ground/study';
import { type TimeUnit, timeText } from '@evenhand/core/ground/units';
import { sceneToSvg } from '@evenhand/draw';
import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import { download } from '../../chart/download.ts';
import { svgFonts } from '../../chart/svg-fonts.ts';
import { useLook, usePreferences } from '../../shell/preferences.ts';
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
  const rows = comparisonRows(comparison);
  const text = (time: number) => timeText(roundMicros(time), unit);
  const change = (time: number) => `${time > 0 ? '+' : ''}${text(time)}`;
  return (
    <table className="plain">
      <caption>Time for one unit, motion by motion, largest change first</caption>
      <thead>
        <tr>
          <th scope="col">Hand</th>
          <th scope="col">Motion</th>
          <th scope="col" className="number">
            {comparison.upper.name}
          </th>
          <th scope="col" className="number">
            {comparison.lower.name}
          </th>
          <th scope="col" className="number">
            Change
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={`${row.hand} ${row.kind}`}>
            <td>{row.hand}</td>
            <th scope="row">{row.name}</th>
            <td className="number">{text(row.upper)}</td>
            <td className="number">{text(row.lower)}</td>
            <td className="number">{change(row.change)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
