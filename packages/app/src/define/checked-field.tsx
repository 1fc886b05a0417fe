import { ok, type Result } from '@evenhand/core/ground/base';
import { useEffect, useId, useState } from 'react';

/**
 * A field that is one edit: written at Enter or on leaving it, taken back by Escape. Wrong input stays as it was typed
 * and the field says beneath it what is wrong.
 */
export function CheckedField<Value>(props: {
  readonly label: string;
  /** The label is read out but not shown, for cells of a table. */
  readonly bare?: boolean | undefined;
  readonly value: string;
  readonly unit?: string | undefined;
  readonly placeholder?: string | undefined;
  readonly disabled?: boolean | undefined;
  readonly type?: 'text' | 'date' | undefined;
  readonly field?: string | undefined;
  readonly list?: string | undefined;
  readonly read: (text: string) => Result<Value, string>;
  readonly onCommit: (value: NoInfer<Value>) => void;
}) {
  const [text, setText] = useState(props.value);
  const [fault, setFault] = useState<string>();
  const id = useId();
  useEffect(() => {
    setText(props.value);
    setFault(undefined);
  }, [props.value]);
  const commit = () => {
    if (text === props.value) return setFault(undefined);
    const read = props.read(text);
    if (!read.ok) return setFault(read.error);
    setFault(undefined);
    props.onCommit(read.value);
    // What was taken comes back as the new value; where it reads the same as before the field must not keep the old text.
    setText(props.value);
  };
  return (
    <label className={fault === undefined ? 'checked-field' : 'checked-field wrong'}>
      <span className={props.bare === true ? 'hidden' : 'label'}>{props.label}</span>
      <span className="input">
        <input
          type={props.type ?? 'text'}
          value={text}
          maxLength={200}
          data-field={props.field}
          list={props.list}
          placeholder={props.placeholder}
          disabled={props.disabled}
          aria-invalid={fault !== undefined}
          aria-describedby={fault === undefined ? undefined : id}
          onChange={(event) => setText(event.target.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key !== 'Escape') return;
            setText(props.value);
            setFault(undefined);
          }}
        />
        {props.unit === undefined ? null : <span className="unit">{props.unit}</span>}
      </span>
      {fault === undefined ? null : (
        <span className="field-fault" id={id} role="alert">
          {fault}
        </span>
      )}
    </label>
  );
}

/** Any text, trimmed. */
export function anyText(text: string): Result<string, string> {
  return ok(text.trim());
}
