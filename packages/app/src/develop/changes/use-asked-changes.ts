import { type ChangeId, changeOf } from '@evenhand/core/develop';
import type { KeptWork } from '@evenhand/core/ground/study';
import { useMemo, useState } from 'react';

export interface AskedChanges {
  /** Changes that are only tried when a person asks for them, and were. */
  readonly more: readonly ChangeId[];
  readonly ask: (id: ChangeId) => void;
}

/** Those chosen on the desk, those whose cost is written, and the one that a link asked for. */
export function useAskedChanges(kept: KeptWork, selected: string | undefined): AskedChanges {
  const [chosen, setChosen] = useState<readonly ChangeId[]>([]);
  const { work, changes } = kept;
  const more = useMemo(() => {
    const named = [...chosen, ...(changes ?? []).map(({ change }) => change), selected ?? ''];
    const asked = named.flatMap((id) => {
      const change = changeOf(id, work);
      return change?.asked === true && change.apply(work) !== undefined ? [change.id] : [];
    });
    return [...new Set(asked)];
  }, [chosen, changes, selected, work]);
  return { more, ask: (id) => setChosen([...chosen, id]) };
}
