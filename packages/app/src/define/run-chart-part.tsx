import { runChart, runOf, type TimeStudySheet } from '@evenhand/core/define';
import { type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import { SceneView } from '../examine/compare/scene-view.tsx';
import { useLook } from '../shell/preferences.ts';

export const wholeCycle = 'whole cycle';
const chartHeight = 240;

/** How an element or the whole cycle ran over the study: a picture, and in words whether it drifted or operators differ. */
export function RunChartPart(props: {
  readonly sheet: TimeStudySheet;
  /** An element by its id, or the whole cycle. */
  readonly chosen: string;
  readonly onChoose: (chosen: string) => void;
}) {
  const { sheet, chosen } = props;
  const look = useLook();
  const host = useRef<HTMLDivElement>(null);
  const width = useWidth(host);
  const row = sheet.rows.find(({ element }) => element.id === chosen);
  const run = useMemo(() => runOf(sheet, row?.element.id), [sheet, row]);
  const scene = useMemo(
    () => (width < 120 ? undefined : runChart(run, { width, height: chartHeight, size: 12 })),
    [run, width],
  );
  const { trend, operators } = row ?? sheet.whole;
  const codes = (sheet.timeStudy.sittings ?? []).filter(({ operatorCode }) => operatorCode !== undefined);
  return (
    <section className="run-part" aria-label="Run chart">
      <header>
        <h3>Run chart</h3>
        <label className="inline-choice">
          <span className="hidden">Of which element</span>
          <select
            value={row === undefined ? wholeCycle : chosen}
            onChange={(event) => props.onChoose(event.target.value)}
          >
            <option value={wholeCycle}>whole cycle</option>
            {sheet.rows.map(({ element }) => (
              <option key={element.id} value={element.id}>
                {element.name}
              </option>
            ))}
          </select>
        </label>
      </header>
      <div ref={host} className="run-host">
        {scene === undefined || run.points.length === 0 ? (
          <p className="soft">There is nothing to draw yet.</p>
        ) : (
          <SceneView scene={scene} look={look} id="run-chart" />
        )}
      </div>
      <p>
        {trend === undefined
          ? 'Three counted readings or more are needed to see whether times drift.'
          : trend.words}
      </p>
      {operators !== undefined ? (
        <p>{operators.words}</p>
      ) : codes.length === 0 ? (
        <p className="soft">With operator codes in two sittings or more, their times are compared here.</p>
      ) : null}
      {row === undefined && sheet.rows.some(({ element }) => element.occurs !== undefined) ? (
        <p className="soft">Elements that do not occur in every cycle are left out of the whole cycle.</p>
      ) : null}
    </section>
  );
}

function useWidth(host: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const measure = () => setWidth(Math.floor(element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [host]);
  return width;
}
