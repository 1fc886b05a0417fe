import {
  carriedTogether,
  exchanged,
  movedBefore,
  moveInRow,
  type Orders,
  toOtherHand,
} from '@evenhand/core/develop';
import { type Hand, hands, otherHand } from '@evenhand/core/ground/study';
import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { type Bar, barsOf } from './bars.ts';
import type { ByHand } from './use-by-hand.ts';

/**
 * The steps of both hands as bars on the time scale of the score above: chosen, moved earlier or later, given to the other
 * hand, exchanged, by pointer and with the keys.
 */
export function HandRows(props: {
  readonly byHand: ByHand;
  /** From microseconds to pixels. */
  readonly x: (us: number) => number;
  readonly width: number;
}) {
  const { byHand, x, width } = props;
  const { instance, judged, set } = byHand;
  const { orders, schedule, faults } = judged;
  const [chosen, setChosen] = useState<{ readonly hand: Hand; readonly task: number }>();
  const host = useRef<HTMLDivElement>(null);
  const nameOf = (task: number) => instance.tasks[task]?.name ?? '';
  const broken = (task: number) => faults.some(({ message }) => message.includes(`“${nameOf(task)}”`));
  const focus = (hand: Hand, task: number) =>
    host.current?.querySelector<HTMLElement>(`[data-bar="${hand} ${task}"]`)?.focus();
  const change = (next: Orders | undefined, task: number, hand: Hand) => {
    set(next);
    const stays = next === undefined || next[hand].includes(task);
    const where = stays ? hand : otherHand(hand);
    setChosen({ hand: where, task });
    // After a change the bar has to be painted in its new place first.
    requestAnimationFrame(() => focus(where, task));
  };
  const give = (task: number, together: boolean) =>
    toOtherHand(instance, orders, schedule, together ? carriedTogether(instance, orders, task) : [task]);
  const onKey = (event: KeyboardEvent, hand: Hand, task: number) => {
    const row = orders[hand];
    const by = event.key === 'ArrowLeft' ? -1 : event.key === 'ArrowRight' ? 1 : undefined;
    const across = hand === 'left' ? 'ArrowDown' : 'ArrowUp';
    if (by !== undefined && event.altKey) change(moveInRow(orders, hand, task, by), task, hand);
    else if (by !== undefined) {
      const next = row[row.indexOf(task) + by];
      if (next !== undefined) focus(hand, next);
    } else if (event.key === across && event.altKey) change(give(task, event.shiftKey), task, hand);
    else if (event.key === across) {
      const start = schedule.placed[task]?.start ?? 0;
      const near = nearest(orders[otherHand(hand)], (other) =>
        Math.abs((schedule.placed[other]?.start ?? 0) - start),
      );
      if (near !== undefined) focus(otherHand(hand), near);
    } else return;
    event.preventDefault();
  };
  const onDrop = (event: PointerEvent, hand: Hand, task: number) => {
    const under = document.elementFromPoint(event.clientX, event.clientY);
    const row = under?.closest('[data-row]')?.getAttribute('data-row');
    if (row === otherHand(hand)) return change(give(task, false), task, hand);
    const name = under?.closest('[data-bar]')?.getAttribute('data-bar');
    const target = Number(name?.split(' ')[1]);
    if (row !== hand || name === undefined || target === task) return;
    const box = under?.closest('[data-bar]')?.getBoundingClientRect();
    const behind = box !== undefined && event.clientX > box.left + box.width / 2;
    const own = orders[hand].filter((other) => other !== task);
    const before = behind ? own[own.indexOf(target) + 1] : target;
    change(movedBefore(orders, hand, task, before), task, hand);
  };
  return (
    <div className="hand-rows" ref={host}>
      {hands.map((hand) => (
        <div
          key={hand}
          className="hand-row"
          data-row={hand}
          role="group"
          aria-label={`Steps of the ${hand} hand`}
          style={{ width }}
        >
          <span className="row-name" style={{ width: x(0) - 8 }}>
            {hand === 'left' ? 'Left steps' : 'Right steps'}
          </span>
          {barsOf(instance, judged, hand).map((bar) => (
            <StepBar
              key={`${bar.task} ${bar.from}`}
              bar={bar}
              hand={hand}
              name={nameOf(bar.task)}
              broken={broken(bar.task)}
              chosen={chosen?.task === bar.task && chosen.hand === hand}
              left={x(bar.from)}
              wide={x(bar.to) - x(bar.from)}
              onChoose={() => setChosen({ hand, task: bar.task })}
              onKey={(event) => onKey(event, hand, bar.task)}
              onDrop={(event) => onDrop(event, hand, bar.task)}
            />
          ))}
        </div>
      ))}
      <ChosenStep
        byHand={byHand}
        chosen={chosen !== undefined && orders[chosen.hand].includes(chosen.task) ? chosen : undefined}
        onChange={change}
        give={give}
      />
    </div>
  );
}

function nearest(list: readonly number[], far: (task: number) => number): number | undefined {
  return list.reduce(
    (best: number | undefined, task) => (best === undefined || far(task) < far(best) ? task : best),
    undefined,
  );
}

function StepBar(props: {
  readonly bar: Bar;
  readonly hand: Hand;
  readonly name: string;
  readonly broken: boolean;
  readonly chosen: boolean;
  readonly left: number;
  readonly wide: number;
  readonly onChoose: () => void;
  readonly onKey: (event: KeyboardEvent) => void;
  readonly onDrop: (event: PointerEvent) => void;
}) {
  const { bar, hand, name, broken, chosen, left, wide } = props;
  const from = useRef<number>(undefined);
  const words = bar.holds ? `holds for ${name}` : name;
  const style = { left, width: Math.max(3, wide - 1) };
  const kind = `${bar.holds ? ' holds' : ''}${broken ? ' broken' : ''}`;
  // What goes on in the next cycle stands at its beginning: it is the same step and no other stop for the keys.
  if (bar.rest)
    return (
      <span className={`step-bar rest${kind}`} style={style} aria-hidden="true" title={words}>
        {name}
      </span>
    );
  return (
    <button
      type="button"
      className={`step-bar${kind}`}
      data-bar={`${hand} ${bar.task}`}
      style={style}
      title={words}
      aria-pressed={chosen}
      aria-label={`${words}${broken ? ', breaks something' : ''}`}
      onFocus={props.onChoose}
      onKeyDown={props.onKey}
      onPointerDown={(event) => {
        from.current = event.clientX + event.clientY;
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerUp={(event) => {
        const moved =
          from.current !== undefined && Math.abs(event.clientX + event.clientY - from.current) > 6;
        from.current = undefined;
        event.currentTarget.releasePointerCapture(event.pointerId);
        if (moved) props.onDrop(event);
      }}
    >
      {name}
    </button>
  );
}

/** What can be done with the step that was chosen, as buttons with words. */
function ChosenStep(props: {
  readonly byHand: ByHand;
  readonly chosen: { readonly hand: Hand; readonly task: number } | undefined;
  readonly onChange: (next: Orders | undefined, task: number, hand: Hand) => void;
  readonly give: (task: number, together: boolean) => Orders | undefined;
}) {
  const { byHand, chosen, onChange, give } = props;
  const { instance, judged } = byHand;
  const { orders } = judged;
  const nameOf = (task: number) => instance.tasks[task]?.name ?? '';
  const button = (words: string, next: Orders | undefined) =>
    chosen === undefined ? null : (
      <button
        type="button"
        disabled={next === undefined}
        onClick={() => onChange(next, chosen.task, chosen.hand)}
      >
        {words}
      </button>
    );
  return (
    <div className="actions hand-actions">
      {chosen === undefined ? (
        <span className="soft">
          Choose a step above to change the method by hand: drag it, or <kbd>Alt</kbd> with the arrow keys.
        </span>
      ) : (
        <>
          <strong title={nameOf(chosen.task)}>{nameOf(chosen.task)}</strong>
          {button('Earlier', moveInRow(orders, chosen.hand, chosen.task, -1))}
          {button('Later', moveInRow(orders, chosen.hand, chosen.task, 1))}
          {button('To the other hand', give(chosen.task, false))}
          {carriedTogether(instance, orders, chosen.task).length > 1
            ? button('… with what it carries', give(chosen.task, true))
            : null}
          <select
            value=""
            aria-label={`Exchange ${nameOf(chosen.task)} with`}
            onChange={(event) =>
              onChange(
                exchanged(orders, chosen.hand, chosen.task, Number(event.target.value)),
                chosen.task,
                chosen.hand,
              )
            }
          >
            <option value="">Exchange with …</option>
            {orders[chosen.hand]
              .filter((task) => task !== chosen.task)
              .map((task) => (
                <option key={task} value={task}>
                  {nameOf(task)}
                </option>
              ))}
          </select>
        </>
      )}
    </div>
  );
}
