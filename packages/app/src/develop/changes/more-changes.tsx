import { type ChangeId, changeRules, changesFor, type Work } from '@evenhand/core/develop';
import { useEffect, useMemo, useRef } from 'react';

/** Changes that nobody can tell from the work whether they may be made: the analyst says what about. */
export function MoreChanges(props: {
  readonly work: Work;
  readonly more: readonly ChangeId[];
  /** A kind that a link asked for: the list is brought into view. */
  readonly selected: string | undefined;
  readonly onAsk: (id: ChangeId) => void;
}) {
  const { work, more, selected, onAsk } = props;
  const box = useRef<HTMLSelectElement>(null);
  const kinds = useMemo(() => {
    const open = changesFor(work).filter(({ asked }) => asked);
    return changeRules
      .filter(({ asked }) => asked === true)
      .map((rule) => ({ rule, changes: open.filter(({ code }) => code === rule.code) }))
      .filter(({ changes }) => changes.length > 0);
  }, [work]);
  const wanted = kinds.some(({ rule }) => rule.code === selected);
  useEffect(() => {
    if (wanted) box.current?.focus();
  }, [wanted]);
  if (kinds.length === 0) return null;
  return (
    <p className="more-changes">
      <label>
        Try as well{' '}
        <select
          ref={box}
          value=""
          onChange={(event) => {
            const id = kinds
              .flatMap(({ changes }) => changes)
              .find((change) => change.id === event.target.value)?.id;
            if (id !== undefined) onAsk(id);
          }}
        >
          <option value="">what only you can say …</option>
          {kinds.map(({ rule, changes }) => (
            <optgroup key={rule.code} label={rule.name}>
              {changes
                .filter(({ id }) => !more.includes(id))
                .map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name.replace(`${rule.name}: `, '')}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      </label>
    </p>
  );
}
