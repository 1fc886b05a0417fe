import { endOf, type Hand, hands, type Motion } from '@evenhand/core/ground/study';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import { timeNumber, timeUnits } from '@evenhand/core/ground/units';
import { confidenceText } from '@evenhand/core/record';
import { useMemo, useState } from 'react';
import {
  type Key,
  ListBox,
  ListBoxItem,
  ListLayout,
  type Selection,
  Virtualizer,
} from 'react-aria-components';
import { usePreferences } from '../shell/preferences.ts';
import type { RecordDesk } from './desk.ts';
import { MotionSwatch } from './motion-swatch.tsx';
import { useDesk, useDocument } from './use-desk.ts';

interface Line {
  readonly id: string;
  readonly hand: Hand;
  readonly motion: Motion;
  readonly end: number;
}

/** The score in words: one line a motion, in order of time, for the keyboard and for those who cannot see the canvas. */
export function MotionList(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { selection, methodId } = useDesk(desk);
  const { study } = useDocument(desk);
  const { unit } = usePreferences();
  const [shown, setShown] = useState<Hand | 'both'>('both');
  const method = study.methods.find((item) => item.id === methodId);
  const lines = useMemo(() => {
    if (method === undefined) return [];
    const chosen = hands.filter((hand) => shown === 'both' || hand === shown);
    const all = chosen.flatMap((hand) =>
      method[hand].items.map(
        (motion, index): Line => ({
          id: `${hand}:${motion.id}`,
          hand,
          motion,
          end: endOf(method[hand], index),
        }),
      ),
    );
    return all.sort(
      (a, b) => a.motion.start - b.motion.start || (a.hand === b.hand ? 0 : a.hand === 'left' ? -1 : 1),
    );
  }, [method, shown]);
  const { clock } = desk;
  const selected = selection?.kind === 'motion' ? [`${selection.hand}:${selection.motionId}`] : [];
  const choose = (keys: Selection) => {
    const key: Key | undefined = keys === 'all' ? undefined : [...keys][0];
    const line = lines.find((item) => item.id === key);
    if (line === undefined) return;
    desk.select({ kind: 'motion', hand: line.hand, motionId: line.motion.id });
    desk.jump(line.motion.start);
  };
  const time = (at: number) => (clock === undefined ? '' : timeNumber(clock.timeOf(at), unit));
  return (
    <section className="motion-list" aria-label="List of motions">
      <header>
        <label className="inline-choice">
          <span>Show</span>
          <select value={shown} onChange={(event) => setShown(event.target.value as Hand | 'both')}>
            <option value="both">both hands</option>
            <option value="left">left hand</option>
            <option value="right">right hand</option>
          </select>
        </label>
        <span className="soft">{timeUnits[unit].symbol}</span>
      </header>
      <Virtualizer layout={ListLayout} layoutOptions={{ rowHeight: 26 }}>
        <ListBox
          aria-label="Motions of both hands in order of time"
          items={lines}
          selectionMode="single"
          selectionBehavior="replace"
          disallowEmptySelection
          selectedKeys={selected}
          onSelectionChange={choose}
          renderEmptyState={() => <p className="soft">Nothing here yet.</p>}
        >
          {(line) => {
            const facts = motionFactsOf(line.motion.kind);
            const words = line.motion.object ?? '';
            const sure = line.motion.said === 'proposed' ? confidenceText(line.motion.confidence) : undefined;
            const duration =
              clock === undefined ? '' : timeNumber(clock.span(line.motion.start, line.end), unit);
            return (
              <ListBoxItem
                id={line.id}
                textValue={`${line.hand} hand, ${facts.name}${words === '' ? '' : `, ${words}`}, starts ${time(line.motion.start)}, lasts ${duration} ${timeUnits[unit].symbol}${sure === undefined ? '' : `, proposed: ${sure}`}`}
              >
                <span className="who">{line.hand === 'left' ? 'L' : 'R'}</span>
                <MotionSwatch kind={line.motion.kind} />
                {sure === undefined ? (
                  <span className="code">{facts.code}</span>
                ) : (
                  <em className="code" title={`Proposed: ${sure}`}>
                    {facts.code}?
                  </em>
                )}
                <span className="words">{words === '' ? facts.name : words}</span>
                <span className="number">{time(line.motion.start)}</span>
                <span className="number">{duration}</span>
              </ListBoxItem>
            );
          }}
        </ListBox>
      </Virtualizer>
    </section>
  );
}
