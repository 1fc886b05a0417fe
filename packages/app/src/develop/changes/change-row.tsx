import type { ChangeId, CostRange, WorkChange } from '@evenhand/core/develop';
import type { KeptChange } from '@evenhand/core/ground/study';
import { principleOf } from '@evenhand/core/ground/tables';
import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { costField, readCostField } from './cost-text.ts';
import type { LeadPointer } from './lead-pointers.ts';

/** One change: what it is, what it is worth, what it supposes, what it costs. */
export function ChangeRow(props: {
  readonly change: WorkChange;
  readonly taken: boolean;
  /** Why it cannot be taken; undefined when it can. */
  readonly idle: boolean;
  /** The figure at the right. */
  readonly figure: ReactNode;
  readonly interval?: string | undefined;
  readonly leads: readonly LeadPointer[];
  readonly kept: KeptChange | undefined;
  readonly currency: string;
  /** Asked for from elsewhere: it is brought into view. */
  readonly asked: boolean;
  readonly onTake: (id: ChangeId, take: boolean) => void;
  readonly onCost: (id: ChangeId, cost: CostRange | undefined) => void;
}) {
  const { change, taken, idle, figure, interval, leads, asked, onTake } = props;
  const { id, name, what, supposes, principle } = change;
  const row = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (asked) row.current?.scrollIntoView({ block: 'nearest' });
  }, [asked]);
  return (
    <li
      ref={row}
      className={`${idle ? 'idle' : ''}${asked ? ' asked' : ''}`.trim() || undefined}
      data-change={id}
    >
      <label>
        <input
          type="checkbox"
          checked={taken}
          disabled={idle && !taken}
          onChange={() => onTake(id, !taken)}
        />
        <strong>{name}</strong>
        <span className="number">{figure}</span>
      </label>
      <div className="change-facts">
        {interval === undefined ? null : <span className="soft">{interval}</span>}
        {idle && !taken ? null : <CostInput {...props} />}
      </div>
      <details open={asked}>
        <summary>{what}</summary>
        {supposes === undefined ? null : <p className="soft">{supposes}</p>}
        {principle === undefined ? null : (
          <p className="soft">
            Principle {principle}: {principleOf(principle).fact}
          </p>
        )}
        {leads.length === 0 ? null : (
          <p className="soft">
            Answers {leads.map(({ rank, name: lead }) => `lead ${rank}, ${lead}`).join('; ')}.
          </p>
        )}
      </details>
    </li>
  );
}

/** What it costs once, in one number or three; kept when the field is left. */
function CostInput(props: Pick<Parameters<typeof ChangeRow>[0], 'change' | 'kept' | 'currency' | 'onCost'>) {
  const { change, kept, currency, onCost } = props;
  const known = costField(kept);
  const [text, setText] = useState(known);
  const [fault, setFault] = useState<string>();
  const told = useId();
  useEffect(() => setText(known), [known]);
  const settle = () => {
    const read = readCostField(text);
    setFault(read.ok ? undefined : read.reason);
    if (read.ok && text.trim() !== known) onCost(change.id, read.value);
  };
  return (
    <span className="change-cost">
      <label>
        <span className="soft">Cost{currency === '' ? '' : `, ${currency}`}</span>
        <input
          type="text"
          inputMode="decimal"
          value={text}
          placeholder="800"
          title="One number, or low..likely..high"
          aria-label={`Cost of ${change.name}`}
          aria-invalid={fault !== undefined}
          aria-describedby={fault === undefined ? undefined : told}
          onChange={(event) => setText(event.target.value)}
          onBlur={settle}
          onKeyDown={(event) => {
            if (event.key === 'Enter') settle();
          }}
        />
      </label>
      {fault === undefined ? null : (
        <span id={told} role="alert" className="fault">
          {fault}
        </span>
      )}
    </span>
  );
}
