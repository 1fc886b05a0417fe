import type { MethodReading } from '@evenhand/core/examine';
import { cycleWords } from '@evenhand/core/examine';
import { isConfirmedCycle } from '@evenhand/core/ground/study';
import { reviewOrder } from '@evenhand/core/record';
import { CommitField } from '../record/commit-field.tsx';
import type { RecordDesk } from '../record/desk.ts';
import { UnitChoice } from '../record/transport.tsx';
import { useDesk, useDocument } from '../record/use-desk.ts';
import { keepMethod } from '../shell/route.ts';
import type { ExamineView } from './examine-desk-view.tsx';
import type { Examined } from './examined.ts';

const views: readonly (readonly [ExamineView, string])[] = [
  ['leads', 'Leads'],
  ['figures', 'Figures'],
  ['compare', 'Before and after'],
];

/** Above the desk: what is shown, of which method and cycles. */
export function ExamineBar(props: {
  readonly desk: RecordDesk;
  readonly view: ExamineView;
  readonly onView: (view: ExamineView) => void;
  readonly cycles: string;
  readonly onCycles: (text: string) => void;
  readonly proposed: boolean;
  readonly onProposed: (proposed: boolean) => void;
  readonly examined: Examined | undefined;
}) {
  const { desk, view } = props;
  const { methodId } = useDesk(desk);
  const { study } = useDocument(desk);
  const { method } = desk;
  const anyProposed = method !== undefined && reviewOrder(method).length > 0;
  return (
    <section className="examine-bar" aria-label="What is examined">
      <div className="tabs" role="group" aria-label="View">
        {views.map(([name, title]) => (
          <button key={name} type="button" aria-pressed={view === name} onClick={() => props.onView(name)}>
            {title}
          </button>
        ))}
      </div>
      {view === 'compare' ? (
        <UnitChoice />
      ) : (
        <>
          <label className="inline-choice">
            <span>Method</span>
            <select
              value={methodId}
              onChange={(event) => {
                desk.chooseMethod(event.target.value);
                keepMethod(event.target.value);
              }}
            >
              {study.methods.map((method) => (
                <option key={method.id} value={method.id}>
                  {method.name}
                </option>
              ))}
            </select>
          </label>
          <div className="cycle-choice">
            <CommitField
              label="Cycles"
              value={props.cycles}
              placeholder="all, or 1-4, 6"
              onCommit={(text) => props.onCycles(text.trim())}
            />
          </div>
          {anyProposed || props.proposed ? (
            <label className="check">
              <input
                type="checkbox"
                checked={props.proposed}
                onChange={(event) => props.onProposed(event.target.checked)}
              />
              with proposals that nobody has confirmed
            </label>
          ) : null}
          {props.examined?.kind === 'read' ? <Counted reading={props.examined.reading} /> : null}
        </>
      )}
    </section>
  );
}

function Counted(props: { readonly reading: MethodReading }) {
  const { cycles, method, choice } = props.reading;
  const numbers = cycles.map(({ number }) => number);
  const { items } = method.cycles;
  const aside = items.filter(({ setAside }) => setAside !== undefined).length;
  const open = items.filter(
    ({ setAside }, index) => setAside === undefined && !isConfirmedCycle(method, index),
  ).length;
  const left = choice.proposed === true || open === 0 ? '' : `; ${open} with proposals left out`;
  const words =
    numbers[0] === 0
      ? 'no cycle is marked: the whole record counts as one'
      : numbers.length === items.length
        ? `all ${numbers.length === 1 ? '1 cycle' : `${numbers.length} cycles`} counted`
        : `${cycleWords(numbers)} counted, of ${items.length}${aside === 0 ? '' : `; ${aside} set aside`}${left}`;
  return <span className="soft">{words}</span>;
}
