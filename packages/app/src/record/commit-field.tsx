import { useEffect, useState } from 'react';

/** A field that is one edit: nothing is written until Enter or leaving it, and Escape takes it back. */
export function CommitField(props: {
  readonly label: string;
  readonly value: string;
  readonly list?: string;
  readonly placeholder?: string;
  readonly onCommit: (text: string) => void;
}) {
  const [text, setText] = useState(props.value);
  useEffect(() => setText(props.value), [props.value]);
  const commit = () => {
    if (text === props.value) return;
    props.onCommit(text);
    // What was taken comes back as the new value; what was refused must not stand here as if it had been.
    setText(props.value);
  };
  return (
    <label>
      <span>{props.label}</span>
      <input
        value={text}
        maxLength={200}
        list={props.list}
        placeholder={props.placeholder}
        onChange={(event) => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
          if (event.key === 'Escape') setText(props.value);
        }}
      />
    </label>
  );
}
