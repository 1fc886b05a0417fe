import { micros } from '@evenhand/core/ground/base';
import type { SingleEdit } from '@evenhand/core/ground/edit';
import { type Clock, clockResiduals, type Film, filmOf, type Operation } from '@evenhand/core/ground/study';
import { exactSeconds, numberText, parseTime, timeText } from '@evenhand/core/ground/units';
import { useState } from 'react';
import { CommitField } from './commit-field.tsx';
import type { RecordDesk } from './desk.ts';
import { useDesk, useDocument } from './use-desk.ts';

const headings: readonly (readonly [Exclude<keyof Operation, 'unitsAYear'>, string])[] = [
  ['name', 'Operation'],
  ['part', 'Part'],
  ['number', 'Number'],
  ['department', 'Department'],
  ['analyst', 'Charted by'],
];

/** What is known of the film, its scene clock, the method and the heading of the study. */
export function FilmPanel(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  useDesk(desk);
  const { study } = useDocument(desk);
  const { method } = desk;
  const film = method === undefined ? undefined : filmOf(study, method);
  const setHeading = (key: keyof Operation, text: string) => {
    const { [key]: _, ...rest } = study.operation;
    const operation = (
      text.trim() === '' && key !== 'name' ? rest : { ...study.operation, [key]: text.trim() }
    ) as Operation;
    desk.dispatch({ type: 'study.change', to: { operation }, was: { operation: study.operation } });
  };
  return (
    <div className="film-panel">
      {film === undefined ? null : <FilmFacts desk={desk} film={film} />}
      {method === undefined ? null : (
        <section className="fields" aria-label="Method">
          <h3>Method</h3>
          <CommitField
            label="Name"
            value={method.name}
            onCommit={(text) => {
              if (text.trim() !== '')
                desk.dispatch({
                  type: 'method.change',
                  method: method.id,
                  to: { name: text.trim() },
                  was: { name: method.name },
                });
            }}
          />
          <CommitField
            label="Units a cycle"
            value={String(method.unitsPerCycle)}
            onCommit={(text) => {
              const units = Number(text);
              if (!Number.isInteger(units) || units < 1 || units > 10_000)
                return desk.say('Units a cycle: write a whole number from 1 to 10 000.');
              desk.dispatch({
                type: 'method.change',
                method: method.id,
                to: { unitsPerCycle: units },
                was: { unitsPerCycle: method.unitsPerCycle },
              });
            }}
          />
        </section>
      )}
      <section className="fields" aria-label="Study">
        <h3>Study</h3>
        <CommitField
          label="Title"
          value={study.title}
          onCommit={(text) => {
            if (text.trim() !== '')
              desk.dispatch({
                type: 'study.change',
                to: { title: text.trim() },
                was: { title: study.title },
              });
          }}
        />
        {headings.map(([key, label]) => (
          <CommitField
            key={key}
            label={label}
            value={study.operation[key] ?? ''}
            onCommit={(text) => setHeading(key, text)}
          />
        ))}
      </section>
    </div>
  );
}

function FilmFacts(props: { readonly desk: RecordDesk; readonly film: Film }) {
  const { desk, film } = props;
  const { clock } = desk;
  const change = (
    to: Extract<SingleEdit, { type: 'film.change' }>['to'],
    was: Extract<SingleEdit, { type: 'film.change' }>['was'],
  ) => desk.dispatch({ type: 'film.change', film: film.id, to, was });
  const frames = clock?.last ?? 0;
  const length = clock === undefined ? undefined : clock.span(0, frames);
  return (
    <section className="fields" aria-label="Film">
      <h3>{film.name}</h3>
      <p className="soft">
        {film.container}, {film.codec}, {film.width} × {film.height}, {frames} frames
        {length === undefined || length === 0
          ? ''
          : `, ${timeText(length, 'seconds')}, ${numberText((frames * 1e6) / length, 2)} frames a second on average`}
      </p>
      <CommitField
        label="Operator code"
        value={film.operatorCode ?? ''}
        onCommit={(text) =>
          change(
            { operatorCode: text.trim() === '' ? null : text.trim() },
            { operatorCode: film.operatorCode ?? null },
          )
        }
      />
      <label className="check">
        <input
          type="checkbox"
          checked={film.agreed === true}
          onChange={(event) =>
            change({ agreed: event.target.checked ? true : null }, { agreed: film.agreed ?? null })
          }
        />
        The person filmed was told and agreed.
      </label>
      <ClockFields desk={desk} film={film} onChange={(to) => change({ clock: to }, { clock: film.clock })} />
    </section>
  );
}

function ClockFields(props: {
  readonly desk: RecordDesk;
  readonly film: Film;
  readonly onChange: (clock: Clock) => void;
}) {
  const { desk, film, onChange } = props;
  const { clock } = film;
  const [reading, setReading] = useState('');
  const residuals = clockResiduals(film);
  const choose = (kind: Clock['kind']) => {
    if (kind === clock.kind) return;
    if (kind === 'identity') return onChange({ kind });
    if (kind === 'factor') return onChange({ kind, realPerFilm: 1 });
    const last = desk.clock?.last ?? 1;
    const timeOf = (frame: number) => Math.max(0, desk.clock?.timeOf(frame) ?? 0);
    onChange({
      kind,
      points: [
        { frame: 0, realUs: timeOf(0) },
        { frame: last, realUs: Math.max(timeOf(0) + 1, timeOf(last)) },
      ],
    });
  };
  const addPoint = () => {
    const time = parseTime(reading, 'seconds');
    if (!time.ok) return desk.say(time.error);
    if (clock.kind !== 'points' || time.value < 0) return;
    const at = desk.playhead;
    const points = [
      ...clock.points.filter((point) => point.frame !== at),
      { frame: at, realUs: time.value },
    ].sort((a, b) => a.frame - b.frame);
    onChange({ kind: 'points', points });
    setReading('');
  };
  return (
    <div className="fields scene-clock">
      <label>
        <span>Scene clock</span>
        <select value={clock.kind} onChange={(event) => choose(event.target.value as Clock['kind'])}>
          <option value="identity">film time is real time</option>
          <option value="factor">slow motion or time lapse</option>
          <option value="points">read from a clock in the picture</option>
        </select>
      </label>
      {clock.kind === 'factor' ? (
        <CommitField
          label="Real seconds for one second of film"
          value={String(clock.realPerFilm)}
          onCommit={(text) => {
            const factor = Number(text.replace(',', '.'));
            if (!(factor > 0 && factor <= 1e6))
              return desk.say(
                'Write a number above 0, such as 0.125 for film taken at 240 and stored at 30 frames a second.',
              );
            onChange({ kind: 'factor', realPerFilm: factor });
          }}
        />
      ) : null}
      {clock.kind === 'points' ? (
        <>
          <table className="plain">
            <thead>
              <tr>
                <th scope="col">Frame</th>
                <th scope="col">Clock shows</th>
                <th scope="col">Off the line</th>
                <th scope="col">
                  <span className="hidden">Remove</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {clock.points.map((point, index) => (
                <tr key={point.frame}>
                  <td className="number">{point.frame}</td>
                  <td className="number">{exactSeconds(micros(point.realUs))} s</td>
                  <td className="number">
                    {residuals?.[index] === undefined
                      ? '–'
                      : timeText(residuals[index] ?? micros(0), 'seconds', 3)}
                  </td>
                  <td>
                    <button
                      type="button"
                      className="quiet"
                      disabled={clock.points.length <= 2}
                      onClick={() =>
                        onChange({ kind: 'points', points: clock.points.filter((item) => item !== point) })
                      }
                    >
                      Remove
                    </button>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <div className="clock-reading">
            <label>
              <span>At the shown frame the clock reads</span>
              <input
                value={reading}
                placeholder="such as 1:02.5"
                onChange={(event) => setReading(event.target.value)}
              />
            </label>
            <button type="button" onClick={addPoint}>
              Set
            </button>
          </div>
        </>
      ) : null}
    </div>
  );
}
