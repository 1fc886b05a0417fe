import { endOf, type Film } from '@evenhand/core/ground/study';
import { chronocyclegraph, chronocyclegraphScene, type GraphSpan } from '@evenhand/core/record';
import { sceneToSvg } from '@evenhand/draw';
import { useState } from 'react';
import { download } from '../../chart/download.ts';
import { svgFonts } from '../../chart/svg-fonts.ts';
import type { RecordDesk } from '../desk.ts';
import { dotColour } from './graph-dots.tsx';
import { useTracks } from './use-tracks.ts';

/** Times from dot to dot, in microseconds of real time, as they are said. */
const steps = [
  [20_000, '0.02 s'],
  [40_000, '0.04 s'],
  [100_000, '0.1 s'],
  [200_000, '0.2 s'],
] as const;

/** The chronocyclegraph: of which cycles, with which time from dot to dot, over the film and as a file. */
export function GraphFields(props: { readonly desk: RecordDesk; readonly film: Film }) {
  const { desk, film } = props;
  const { shown, graph } = useTracks(desk);
  const [which, setWhich] = useState('none');
  const [every, setEvery] = useState(40_000);
  const { method, clock } = desk;
  if (shown === undefined || method === undefined || clock === undefined) return null;
  const { cycles } = method;
  const show = (name: string, time: number) => {
    setWhich(name);
    setEvery(time);
    const spans = spansOf(desk, name);
    desk.tracks.showGraph(spans.length === 0 ? undefined : { spans, every: time });
  };
  const save = async () => {
    if (graph === undefined) return;
    const paths = chronocyclegraph(shown.motions, graph.spans, graph.every, clock.timeOf);
    const scene = chronocyclegraphScene(paths, {
      title: `${method.name}: chronocyclegraph`,
      unit: shown.unit,
      picture: film,
      every: graph.every,
      cycles: graph.spans.length,
      colourOf: (path, dot) => dotColour(desk, path, dot),
    });
    const text = sceneToSvg(scene, { fonts: await svgFonts() });
    download(`${method.name} - chronocyclegraph.svg`, new Blob([text], { type: 'image/svg+xml' }));
  };
  return (
    <section aria-label="Chronocyclegraph">
      <h3>Chronocyclegraph</h3>
      {shown.inPicture === undefined ? (
        <p className="soft">
          This track is in millimetres, so it cannot be laid over the film; it can be saved.
        </p>
      ) : null}
      <div className="fields">
        <label>
          <span>Shown</span>
          <select
            value={graph === undefined ? 'none' : which}
            onChange={(event) => show(event.target.value, every)}
          >
            <option value="none">nothing</option>
            {cycles.items.length === 0 ? null : <option value="all">all cycles, overlaid</option>}
            {cycles.items.map((cycle, index) => (
              <option key={cycle.id} value={cycle.id}>
                cycle {index + 1}
                {cycle.setAside === undefined ? '' : ' (set aside)'}
              </option>
            ))}
            {desk.selectedSpan === undefined ? null : <option value="selection">what is selected</option>}
            {cycles.items.length === 0 ? <option value="whole">the whole film</option> : null}
          </select>
        </label>
        <label>
          <span>A dot each</span>
          <select value={every} onChange={(event) => show(which, Number(event.target.value))}>
            {steps.map(([time, text]) => (
              <option key={time} value={time}>
                {text}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p className="soft">
        Round dots: left hand; diamonds: right hand; in the colours of the motions. Wide steps are fast,
        crowded ones slow.
      </p>
      <div className="actions">
        <button type="button" disabled={graph === undefined} onClick={() => void save()}>
          Save as SVG
        </button>
      </div>
    </section>
  );
}

function spansOf(desk: RecordDesk, name: string): readonly GraphSpan[] {
  const { method } = desk;
  if (method === undefined || name === 'none') return [];
  if (name === 'whole') return [{ from: 0, to: desk.end }];
  if (name === 'selection') return desk.selectedSpan === undefined ? [] : [desk.selectedSpan];
  return method.cycles.items.flatMap((cycle, index) =>
    (name === 'all' ? cycle.setAside === undefined : cycle.id === name)
      ? [{ from: cycle.start, to: endOf(method.cycles, index) }]
      : [],
  );
}
