import './tracks.css';
import { type Hand, hands } from '@evenhand/core/ground/study';
import { numberText, percentText } from '@evenhand/core/ground/units';
import { type MotionFigures, motionFigures, type Track } from '@evenhand/core/record';
import type { RecordDesk } from '../desk.ts';
import { useTracks } from './use-tracks.ts';

/** What the track says of the selected motion or span: way, speed and smoothness of the hand. */
export function PathFigures(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { shown } = useTracks(desk);
  const span = desk.selectedSpan;
  const { clock } = desk;
  if (shown === undefined || span === undefined || clock === undefined) return null;
  const moving = desk.selectedMotion?.item.kind;
  return (
    <section className="path-figures" aria-label="Path of the hand">
      {hands
        .filter((hand) => desk.selectedHands.includes(hand))
        .map((hand) => {
          const motion = shown.motions[hand];
          const figures =
            motion === undefined ? undefined : motionFigures(motion, span.from, span.to, clock.timeOf);
          return figures === undefined ? (
            <p key={hand} className="soft">
              The {hand} hand is not seen here.
            </p>
          ) : (
            <HandFigures
              key={hand}
              hand={desk.selectedHands.length === 2 ? hand : undefined}
              figures={figures}
              unit={shown.unit}
              smooth={moving === 'TE' || moving === 'TL'}
            />
          );
        })}
    </section>
  );
}

function HandFigures(props: {
  readonly hand: Hand | undefined;
  readonly figures: MotionFigures;
  readonly unit: Track['unit'];
  /** Smoothness is a measure of movements from one place to another. */
  readonly smooth: boolean;
}) {
  const { hand, figures, unit } = props;
  const { path, straight, peak, smoothness, seen } = figures;
  const word = unit === 'millimetres' ? 'mm' : 'px';
  const whole = seen === 1;
  return (
    <dl>
      <dt>{hand === undefined ? 'Path' : `Path, ${hand}`}</dt>
      <dd>
        {whole ? '' : 'at least '}
        {numberText(path, 0)} {word} <span className="soft">({numberText(straight, 0)} straight)</span>
      </dd>
      {peak === undefined ? null : (
        <>
          <dt>Peak speed</dt>
          <dd>
            {unit === 'millimetres'
              ? `${numberText(peak.speed / 1000, 2)} m/s`
              : `${numberText(peak.speed, 0)} px/s`}{' '}
            <span className="soft">at frame {peak.frame}</span>
          </dd>
        </>
      )}
      {props.smooth && smoothness !== undefined ? (
        <>
          <dt>Smoothness</dt>
          <dd title="Spectral arc length (Balasubramanian et al. 2015): without unit, below 0, nearer to 0 is smoother.">
            {numberText(smoothness, 2)}{' '}
            <span className="soft">(spectral arc length; nearer to 0 is smoother)</span>
          </dd>
        </>
      ) : null}
      {whole ? null : (
        <>
          <dt>Seen</dt>
          <dd>in {percentText(seen, 0)} of the frames</dd>
        </>
      )}
    </dl>
  );
}
