import './changes.css';
import { type ChangeId, changeOf, changesFor, type WorkChange } from '@evenhand/core/develop';
import { micros } from '@evenhand/core/ground/base';
import type { KeptWork, Study } from '@evenhand/core/ground/study';
import { percentText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import type { PlainWorth } from '../developed-plain.ts';
import type { Developed } from '../use-developed.ts';
import { setCost, setCurrency } from './change-edits.ts';
import { ChangeRow } from './change-row.tsx';
import { FrontSection } from './front-section.tsx';
import { leadPointers } from './lead-pointers.ts';
import { MoreChanges } from './more-changes.tsx';
import type { AskedChanges } from './use-asked-changes.ts';
import type { FrontSearch } from './use-front.ts';

interface Props {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly kept: KeptWork;
  readonly methodId: string | undefined;
  readonly found: Developed;
  readonly taken: readonly ChangeId[];
  readonly asked: AskedChanges;
  /** A change that a link asked for. */
  readonly selected: string | undefined;
  readonly front: FrontSearch;
  readonly unit: TimeUnit;
  readonly onTake: (taken: readonly ChangeId[]) => void;
}

/** What each change is worth on top of those that are taken, largest first, and which of them go together best. */
export function ChangesList(props: Props) {
  const { desk, study, kept, methodId, found, taken, asked, selected, front, unit, onTake } = props;
  const { work, currency = '' } = kept;
  const { methods } = study;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the leads are those of the records
  const leads = useMemo(() => leadPointers(study, methodId), [methods, methodId]);
  const already = found.taken?.saved ?? 0;
  const open = openChanges(kept, taken, asked.more).map((change) => ({
    change,
    worth: found.changes.get(change.id),
    known: found.changes.has(change.id),
  }));
  const saved = (worth: PlainWorth | undefined) => worth?.saved ?? Number.NEGATIVE_INFINITY;
  const worthy = open.filter(({ worth, known }) => worth !== undefined || !known);
  const first = (change: WorkChange) => Number(change.id === selected);
  worthy.sort((a, b) => first(b.change) - first(a.change) || saved(b.worth) - saved(a.worth));
  const idle = open.filter(({ worth, known }) => worth === undefined && known);
  const time = (us: number) => timeText(micros(Math.round(us)), unit);
  const row = (
    change: WorkChange,
    facts: { figure: string; idle?: boolean; interval?: string | undefined },
  ) => (
    <ChangeRow
      key={change.id}
      change={change}
      taken={taken.includes(change.id)}
      idle={facts.idle === true}
      figure={facts.figure}
      interval={facts.interval}
      leads={leads.get(change.code) ?? []}
      kept={kept.changes?.find((entry) => entry.change === change.id)}
      currency={currency}
      asked={change.id === selected}
      onTake={(id, take) => onTake(take ? [...taken, id] : taken.filter((other) => other !== id))}
      onCost={(id, cost) => {
        const edit = setCost(kept, id, cost);
        if (edit !== undefined) desk.dispatch(edit);
      }}
    />
  );
  return (
    <section className="work-changes" aria-label="Changes">
      <h2>Changes</h2>
      {taken.length === 0 ? (
        <p className="soft">
          What each would be worth for a unit, composed anew. Take one, and the others are reckoned on top of
          it.
        </p>
      ) : (
        <>
          <h3>Taken</h3>
          <ul>
            {taken.flatMap((id) => {
              const change = changeOf(id, work);
              return change === undefined ? [] : [row(change, { figure: '' })];
            })}
          </ul>
          <TakenWords found={found} unit={unit} />
          <h3>What one more would be worth</h3>
        </>
      )}
      <ul>
        {worthy.map(({ change, worth }) =>
          row(change, {
            figure: worth === undefined ? '…' : time(worth.saved - already),
            interval:
              worth === undefined || taken.length > 0
                ? undefined
                : `${time(worth.interval.low)} to ${time(worth.interval.high)}`,
          }),
        )}
      </ul>
      <MoreChanges work={work} more={asked.more} selected={selected} onAsk={asked.ask} />
      <FrontSection search={front} unit={unit} currency={currency} onTake={onTake} />
      <CurrencyField kept={kept} desk={desk} />
      {idle.length === 0 ? null : (
        <details className="idle-changes" open={idle.some(({ change }) => change.id === selected)}>
          <summary>Nothing to change in this work as it stands ({idle.length})</summary>
          <ul>{idle.map(({ change }) => row(change, { figure: '', idle: true }))}</ul>
        </details>
      )}
    </section>
  );
}

/** Those that are always tried and those that were asked for, without those that are taken. */
function openChanges(
  { work }: KeptWork,
  taken: readonly ChangeId[],
  more: readonly ChangeId[],
): readonly WorkChange[] {
  const usual = changesFor(work).filter(({ asked }) => !asked);
  const named = more.flatMap((id) => changeOf(id, work) ?? []);
  return [...named, ...usual].filter(({ id }) => !taken.includes(id));
}

function TakenWords(props: { readonly found: Developed; readonly unit: TimeUnit }) {
  const { taken, working } = props.found;
  const time = (us: number) => timeText(micros(Math.round(us)), props.unit);
  if (taken === undefined)
    return <p role="status">{working ? 'Working it out …' : 'These changes cannot be made together.'}</p>;
  return (
    <p>
      Together <strong>{time(taken.saved)}</strong> a unit saved ({time(taken.interval.low)} to{' '}
      {time(taken.interval.high)}, {percentText(taken.interval.confidence, 0)} interval).
    </p>
  );
}

/** The sign beside a cost; it belongs to the work. */
function CurrencyField(props: { readonly kept: KeptWork; readonly desk: RecordDesk }) {
  const { kept, desk } = props;
  return (
    <p className="change-cost">
      <label>
        <span className="soft">Currency of the costs</span>
        <input
          key={kept.currency ?? ''}
          type="text"
          size={5}
          maxLength={10}
          defaultValue={kept.currency ?? ''}
          onBlur={(event) => {
            const edit = setCurrency(kept, event.target.value);
            if (edit !== undefined) desk.dispatch(edit);
          }}
        />
      </label>
    </p>
  );
}
