import type { Result } from '@evenhand/core/ground/base';
import { type ReactNode, useId } from 'react';

/** A field of a calculator: what is written counts at once. */
export function Field(props: {
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
  readonly wide?: boolean;
  readonly onChange: (text: string) => void;
}) {
  return (
    <label className={props.wide === true ? 'calc-field wide' : 'calc-field'}>
      <span>{props.label}</span>
      <span className="input">
        <input value={props.value} maxLength={200} onChange={(event) => props.onChange(event.target.value)} />
        {props.unit === undefined ? null : <span className="unit">{props.unit}</span>}
      </span>
    </label>
  );
}

export function Choice<Value extends string>(props: {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly (readonly [Value, string])[];
  readonly onChange: (value: Value) => void;
}) {
  return (
    <label className="calc-field wide">
      <span>{props.label}</span>
      <select value={props.value} onChange={(event) => props.onChange(event.target.value as Value)}>
        {props.options.map(([value, text]) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}

export function Pasted(props: {
  readonly label: string;
  readonly value: string;
  readonly rows?: number;
  readonly placeholder?: string;
  readonly onChange: (text: string) => void;
}) {
  return (
    <label className="calc-field wide">
      <span>{props.label}</span>
      <textarea
        rows={props.rows ?? 5}
        value={props.value}
        spellCheck={false}
        placeholder={props.placeholder}
        onChange={(event) => props.onChange(event.target.value)}
      />
    </label>
  );
}

/** One question with its fields on the left and its answer on the right. */
export function Calculator(props: {
  readonly title: string;
  readonly about: string;
  readonly fields: ReactNode;
  readonly children: ReactNode;
}) {
  const id = useId();
  return (
    <section className="calculator" aria-labelledby={id}>
      <h3 id={id}>{props.title}</h3>
      <p className="soft">{props.about}</p>
      <div className="calc-halves">
        <div className="calc-fields">{props.fields}</div>
        <div className="calc-answer" aria-live="polite">
          {props.children}
        </div>
      </div>
    </section>
  );
}

/** The answer, or in words what is missing for it. */
export function Answer<Value>(props: {
  readonly of: Result<Value, string>;
  readonly children: (value: Value) => ReactNode;
}) {
  if (props.of.ok) return props.children(props.of.value);
  const begun = !/nothing is written|^Paste/.test(props.of.error);
  return <p className={begun ? 'fault-text' : 'soft'}>{props.of.error}</p>;
}
