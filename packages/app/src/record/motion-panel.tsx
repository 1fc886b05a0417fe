import { type Motion, otherHand } from '@evenhand/core/ground/study';
import { type MotionKind, motionFacts, motionFactsOf } from '@evenhand/core/ground/tables';
import { countText, timeText } from '@evenhand/core/ground/units';
import { useId } from 'react';
import { usePreferences } from '../shell/preferences.ts';
import { CommitField } from './commit-field.tsx';
import type { RecordDesk } from './desk.ts';
import {
  changeSelected,
  clear,
  copyToNext,
  copyToOther,
  join,
  nudge,
  setPlace,
  split,
} from './desk-edits.ts';
import { MotionSwatch } from './motion-swatch.tsx';
import { PathFigures } from './tracks/path-figures.tsx';
import { useDesk, useDocument } from './use-desk.ts';

/** The selected motion or span: its fields and what can be done with it. */
export function MotionPanel(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { selection } = useDesk(desk);
  useDocument(desk);
  const one = desk.selectedMotion;
  const span = desk.selectedSpan;
  if (selection === undefined || span === undefined) {
    return (
      <p className="motion-panel soft">
        Nothing is selected. ↑ selects the left hand’s motion at the playhead, ↓ the right hand’s.
      </p>
    );
  }
  return (
    <section className="motion-panel" aria-label="Selection">
      {one === undefined ? <SpanHead desk={desk} /> : <MotionHead desk={desk} />}
      <MotionFields key={one?.item.id ?? `${span.from}-${span.to}`} desk={desk} motion={one?.item} />
      <PathFigures desk={desk} />
      <div className="actions">
        {one === undefined ? null : (
          <>
            <button type="button" onClick={() => split(desk)}>
              Split here
            </button>
            <button type="button" onClick={() => join(desk)}>
              Join with before
            </button>
          </>
        )}
        {selection.hand === 'both' ? null : (
          <button type="button" onClick={() => copyToOther(desk)}>
            Copy to {otherHand(selection.hand)} hand
          </button>
        )}
        <button type="button" onClick={() => copyToNext(desk)}>
          Copy to next cycle
        </button>
        <button type="button" onClick={() => clear(desk)}>
          Clear
        </button>
      </div>
    </section>
  );
}

function MotionHead(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { unit } = usePreferences();
  const one = desk.selectedMotion;
  const { clock } = desk;
  if (one === undefined || clock === undefined) return null;
  const facts = motionFactsOf(one.item.kind);
  const at = (boundary: number) =>
    clock.unit === 'frames' ? String(boundary) : timeText(clock.timeOf(boundary), unit);
  return (
    <header>
      <h3>
        <MotionSwatch kind={one.item.kind} /> <span className="code">{facts.code}</span> {facts.name}
        <span className="soft">, {one.hand} hand</span>
      </h3>
      <div className="span-row">
        <Nudge desk={desk} edge="start" text={at(one.start)} frames={clock.unit === 'frames'} />
        <span className="duration">{timeText(clock.span(one.start, one.end), unit)}</span>
        <Nudge desk={desk} edge="end" text={at(one.end)} frames={clock.unit === 'frames'} />
      </div>
    </header>
  );
}

function Nudge(props: {
  readonly desk: RecordDesk;
  readonly edge: 'start' | 'end';
  readonly text: string;
  readonly frames: boolean;
}) {
  const { desk, edge } = props;
  return (
    <span className="nudge">
      <button type="button" aria-label={`${edge} one frame earlier`} onClick={() => nudge(desk, edge, -1)}>
        ◂
      </button>
      <span>
        {props.frames ? <span className="word">frame </span> : null}
        {props.text}
      </span>
      <button type="button" aria-label={`${edge} one frame later`} onClick={() => nudge(desk, edge, 1)}>
        ▸
      </button>
    </span>
  );
}

function SpanHead(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { unit } = usePreferences();
  const span = desk.selectedSpan;
  const { clock } = desk;
  if (span === undefined || clock === undefined) return null;
  const who = desk.selectedHands.length === 2 ? 'both hands' : `${desk.selectedHands[0]} hand`;
  return (
    <header>
      <h3>Span, {who}</h3>
      <p>
        {clock.unit === 'frames'
          ? `frames ${span.from} to ${span.to}, ${countText(span.to - span.from, 'frame')}, `
          : ''}
        {timeText(clock.span(span.from, span.to), unit)}
      </p>
    </header>
  );
}

function MotionFields(props: { readonly desk: RecordDesk; readonly motion: Motion | undefined }) {
  const { desk, motion } = props;
  const { study } = desk;
  const lists = useId();
  const objects = [
    ...new Set(
      study.methods.flatMap((method) =>
        [...method.left.items, ...method.right.items].flatMap((item) => item.object ?? []),
      ),
    ),
  ].sort();
  const placeName = (id: string | undefined) => study.places.find((place) => place.id === id)?.name ?? '';
  return (
    <div className="fields">
      <label>
        <span>Motion</span>
        <select
          value={motion?.kind ?? ''}
          onChange={(event) =>
            changeSelected(
              desk,
              { kind: event.target.value as MotionKind, said: 'marked' },
              'name a motion anew',
            )
          }
        >
          {motion === undefined ? <option value="">as they are</option> : null}
          {motionFacts.map((facts) => (
            <option key={facts.kind} value={facts.kind}>
              {facts.code} {facts.name}
            </option>
          ))}
        </select>
      </label>
      <CommitField
        label="Object"
        value={motion?.object ?? ''}
        list={`${lists}-objects`}
        onCommit={(text) =>
          changeSelected(desk, { object: text.trim() === '' ? null : text.trim() }, 'name the object')
        }
      />
      <div className="pair">
        <CommitField
          label="From"
          value={placeName(motion?.from)}
          list={`${lists}-places`}
          onCommit={(text) => setPlace(desk, 'from', text)}
        />
        <CommitField
          label="To"
          value={placeName(motion?.to)}
          list={`${lists}-places`}
          onCommit={(text) => setPlace(desk, 'to', text)}
        />
      </div>
      <CommitField
        label="Note"
        value={motion?.note ?? ''}
        onCommit={(text) => changeSelected(desk, { note: text.trim() === '' ? null : text }, 'write a note')}
      />
      <datalist id={`${lists}-objects`}>
        {objects.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <datalist id={`${lists}-places`}>
        {study.places.map((place) => (
          <option key={place.id} value={place.name} />
        ))}
      </datalist>
    </div>
  );
}
