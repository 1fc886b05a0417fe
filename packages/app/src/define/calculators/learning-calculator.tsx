import {
  fitLearning,
  type LearningCurve,
  type LearningFit,
  type LearningModel,
  learningModelWords,
} from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { numberText, percentText } from '@evenhand/core/ground/units';
import { useMemo, useState } from 'react';
import { all, numberOf } from './calculator-input.ts';
import { Answer, Calculator, Choice, Field, Pasted } from './calculator-parts.tsx';
import { figuresOf, type WantedFigures } from './learning-figures.ts';
import { pointsFor, readPoints, type TimesAre } from './learning-points.ts';

const models: readonly (readonly [LearningModel, string])[] = [
  ['unit', 'times of units (Crawford)'],
  ['cumulative-average', 'average of all units so far (Wright)'],
];

/** A learning curve from pasted times or from its first time and rate: times of units, batches and totals. */
export function LearningCalculator() {
  const [model, setModel] = useState<LearningModel>('unit');
  const [source, setSource] = useState<'times' | 'rate'>('times');
  const [are, setAre] = useState<TimesAre>('units');
  const [text, setText] = useState('');
  const [first, setFirst] = useState('');
  const [rate, setRate] = useState('80');
  const [wanted, setWanted] = useState<WantedFigures>({ unit: '100', from: '101', to: '200', reach: '' });
  const curve = useMemo(
    () => (source === 'times' ? fitted(model, are, text) : given(model, first, rate)),
    [source, model, are, text, first, rate],
  );
  const field = (name: keyof WantedFigures, label: string) => (
    <Field label={label} value={wanted[name]} onChange={(value) => setWanted({ ...wanted, [name]: value })} />
  );
  return (
    <Calculator
      title="Learning curve"
      about="What falls along the line is either the time of a unit or the average of all units so far. The same rate gives far shorter times in the second model, so the model is named with every figure."
      fields={
        <>
          <Choice
            label="What falls to the rate with each doubling"
            value={model}
            options={models}
            onChange={setModel}
          />
          <Choice
            label="The curve comes from"
            value={source}
            options={[
              ['times', 'times that were taken'],
              ['rate', 'the first time and a rate'],
            ]}
            onChange={setSource}
          />
          {source === 'times' ? (
            <>
              <Pasted
                label="One a line: a time, or a unit and its time"
                rows={6}
                value={text}
                placeholder={'1 9.8\n2 8.1\n4 6.6\n8 5.2'}
                onChange={setText}
              />
              <Choice
                label="The pasted times are"
                value={are}
                options={[
                  ['units', 'times of single units'],
                  ['averages', 'averages of all units up to each'],
                ]}
                onChange={setAre}
              />
            </>
          ) : (
            <>
              <Field label="Time of the first unit" value={first} onChange={setFirst} />
              <Field label="Rate" unit="%" value={rate} onChange={setRate} />
            </>
          )}
          {field('unit', 'Unit')}
          {field('from', 'Batch from unit')}
          {field('to', 'to unit')}
          {field('reach', 'Wanted time of a unit')}
        </>
      }
    >
      <Answer of={curve}>{(found) => <CurveAnswer curve={found} wanted={wanted} />}</Answer>
    </Calculator>
  );
}

type Found = LearningCurve & Partial<LearningFit>;

function CurveAnswer(props: { readonly curve: Found; readonly wanted: WantedFigures }) {
  const { curve } = props;
  const { rateInterval, points, explained } = curve;
  return (
    <>
      <p>
        <strong className="calc-big">{percentText(curve.rate)}</strong> rate, first unit{' '}
        {numberText(curve.first, 3)}
        {rateInterval === undefined || points === undefined || explained === undefined ? null : (
          <>
            ; {percentText(rateInterval.confidence, 0)} interval of the rate {percentText(rateInterval.low)}{' '}
            to {percentText(rateInterval.high)} from {points} points; the line explains{' '}
            {percentText(explained)} of their spread
          </>
        )}
        .
      </p>
      <p>The {learningModelWords[curve.model]}.</p>
      {curve.rate > 1 ? (
        <p className="fault-text">Times rise here, so there is no learning to reckon with.</p>
      ) : (
        <Figures curve={curve} wanted={props.wanted} />
      )}
    </>
  );
}

function Figures(props: { readonly curve: LearningCurve; readonly wanted: WantedFigures }) {
  const { curve, wanted } = props;
  const { model, first, rate } = curve;
  const lines = figuresOf({ model, first, rate }, wanted);
  return (
    <table className="plain">
      <tbody>
        {lines.map(([words, figure]) => (
          <tr key={words}>
            <th scope="row">{words}</th>
            <td className="number">{figure.ok ? figure.value : ''}</td>
            <td>{figure.ok ? '' : <span className="fault-text">{figure.error}</span>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function fitted(model: LearningModel, are: TimesAre, text: string): Result<Found, string> {
  if (text.trim() === '') return fail('Paste three times or more.');
  const points = readPoints(text);
  if (!points.ok) return points;
  const wanted = pointsFor(model, are, points.value);
  if (!wanted.ok) return wanted;
  const fit = fitLearning(model, wanted.value);
  return fit.ok ? ok(fit.value) : fail(fit.error.message);
}

function given(model: LearningModel, first: string, rate: string): Result<Found, string> {
  const read = all(
    numberOf(first, 'The time of the first unit', { above: 0 }),
    numberOf(rate, 'The rate in percent', { above: model === 'unit' ? 0 : 50, most: 100 }),
  );
  return read.ok ? ok({ model, first: read.value[0], rate: read.value[1] / 100 }) : read;
}
